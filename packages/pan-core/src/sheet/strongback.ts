import type { Design } from '../design/index.js';
import { circlePath } from '../geometry/index.js';
import type { Vec2 } from '../numeric/index.js';
import type { Profile } from '../pan/index.js';
import { finishPart } from './finish.js';
import { flangeHoles, roundHole } from './flange-hole.js';
import { flangeOutline, insideAtRail } from './flange-shape.js';
import type { Part } from './part.js';

/** Hole for filling or bleeding in the leak-test blank, mm: common practice, no source. */
const BLEED_HOLE = 6;

/** The plate that clamps the flange for welding, guides the drill after, and closes the pan for the leak test. */
export const strongbackPart = (design: Design, profile: Profile, notes: readonly string[]): Part => {
  const holes = flangeHoles(design);
  const { split, endSeals } = design.pan.flange;
  return finishPart({
    name: 'strongback',
    what: 'Plate of the flange’s outline: clamps it flat for welding, then closes the pan for the leak test.',
    quantity: 1,
    material: design.pan.sheet.material,
    thickness: design.pan.flange.thickness,
    drawnFace: 'either',
    outline: flangeOutline(design),
    openings: [],
    holes: holes.map(roundHole),
    folds: [],
    marks: [
      {
        path: circlePath(middleOf(insideAtRail(design, profile)), BLEED_HOLE / 2),
        what: `drill ${BLEED_HOLE} mm to fill and bleed, leak test`,
      },
    ],
    notes: [
      ...notes,
      'Same outline and holes as the flange, no opening. Any flat plate at least this thick will serve.',
      'For the leak test drill the marked hole, and close it after.',
      ...(holes.some(({ later }) => later)
        ? ['Its holes guide the drill for those that the flange only has marked.']
        : []),
      ...(split === null
        ? []
        : ['In one piece: the flange’s halves are bolted to it while their joint is welded.']),
      ...(endSeals.length === 0
        ? []
        : [
            'It does not close the arc of an end plate: for the leak test clamp a faced block and gasket over that.',
          ]),
    ],
  });
};

const middleOf = (points: readonly Vec2[]): Vec2 => {
  const sum = points.reduce<Vec2>((s, p) => [s[0] + p[0], s[1] + p[1]], [0, 0]);
  return [sum[0] / points.length, sum[1] / points.length];
};

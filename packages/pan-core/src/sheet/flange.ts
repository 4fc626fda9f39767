import type { Design, RailHole } from '../design/index.js';
import { PanError } from '../errors/index.js';
import {
  circlePath,
  clockwise,
  type Path,
  pathArea,
  pathDistance,
  polygonOffset,
  selfCrossings,
} from '../geometry/index.js';
import type { Vec2 } from '../numeric/index.js';
import { halfWidthAt, type Profile } from '../pan/index.js';
import table from './clearance-holes.json' with { type: 'json' };
import { finishPart } from './finish.js';
import type { Mark, Part, RoundHole } from './part.js';

/** Gap all round between the pan's outside and the flange's opening, mm: common practice, no source. */
export const FLANGE_GAP = 0.2;
/** Hole for filling or bleeding in the leak-test blank, mm: common practice, no source. */
const BLEED_HOLE = 6;

/** ISO 273 clearance hole for a thread, mm; null outside M5–M12. */
export const clearanceHole = (thread: number, fit: 'fine' | 'medium' | 'coarse'): number | null =>
  table.rows.find((row) => row.thread === thread)?.[fit] ?? null;

/** The pan's inside at the rail plane seen from above, counter-clockwise. */
export const insideAtRail = (design: Design, profile: Profile): readonly Vec2[] => {
  const front = profile.sharp[0]![0];
  const rear = profile.sharp[profile.sharp.length - 1]![0];
  const run = (rows: Design['pan']['left']): readonly number[] => [
    rear,
    ...rows.map((r) => r[0]).filter((x) => x > rear && x < front),
    front,
  ];
  const right = run(design.pan.right).map((x): Vec2 => [x, -halfWidthAt(design.pan.right, x)]);
  const left = run(design.pan.left).map((x): Vec2 => [x, halfWidthAt(design.pan.left, x)]);
  return [...right, ...[...left].reverse()];
};

/** The flange's outer edge seen from above: the rail, or so far beyond it as the design says. */
export const flangeOutline = (design: Design): Path => {
  const outline = polygonOffset(design.engine.rail.outline, design.pan.flange.beyond);
  if (pathArea(outline) <= 0 || selfCrossings(outline).length > 0) {
    throw new PanError({
      code: 'sheet-cut',
      path: ['pan', 'flange', 'beyond'],
      message: `A flange ${design.pan.flange.beyond} mm beyond the rail crosses its own outline.`,
      advice: 'Let it stand out less, or leave the inlet out of the rail’s outline.',
    });
  }
  return outline;
};

/** The flange's opening: the pan's outside at the rail and a gap, corners round about the pan's own corners. */
export const flangeOpening = (design: Design, profile: Profile): Path =>
  clockwise(polygonOffset(insideAtRail(design, profile), design.pan.sheet.thickness + FLANGE_GAP));

const holeFor = (design: Design, hole: RailHole): RoundHole => {
  const diameter = clearanceHole(hole.thread, design.pan.flange.fit);
  if (diameter === null) {
    throw new PanError({
      code: 'input-range',
      path: ['engine', 'rail_holes'],
      message: `There is no clearance hole in the table for an M${hole.thread} bolt.`,
      expected: 'M5, M6, M8, M10 or M12',
      found: `M${hole.thread}`,
      advice: 'Give the size of the rail’s threads as one of these.',
    });
  }
  return { at: hole.at, diameter, what: `M${hole.thread} clearance, ${design.pan.flange.fit}` };
};

/** The flange and the strongback that matches it, both seen from above. */
export const flangeParts = (design: Design, profile: Profile): readonly Part[] => {
  const outline = flangeOutline(design);
  const holes = design.engine.railHoles.map((h) => holeFor(design, h));
  const { material } = design.pan.sheet;
  const { thickness } = design.pan.flange;
  const seen = 'Seen from above, the block’s face up; front of the car at the right.';
  const transfer = 'No holes are drawn: transfer holes from the block.';
  const middle = holeFreePlace(design, profile);
  const bead = beadMark(design, profile, holes);
  return [
    finishPart({
      name: 'flange',
      what: 'Bolts to the block’s pan rail; the pan passes through it and is welded from below.',
      quantity: 1,
      material,
      thickness,
      drawnFace: 'oil side',
      outline,
      openings: [flangeOpening(design, profile)],
      holes,
      folds: [],
      marks: bead,
      notes: [
        seen,
        `The opening is the pan’s outside and ${FLANGE_GAP} mm all round; the sheet passes through and ends flush.`,
        ...(bead.length > 0 ? ['Sealant in one unbroken line along the mark, inside the bolts.'] : []),
        ...(holes.length === 0 ? [transfer] : []),
      ],
    }),
    finishPart({
      name: 'strongback',
      what: 'Plate of the flange’s outline: clamps it flat for welding, then closes the pan for the leak test.',
      quantity: 1,
      material,
      thickness,
      drawnFace: 'either',
      outline,
      openings: [],
      holes,
      folds: [],
      marks: [
        {
          path: circlePath(middle, BLEED_HOLE / 2),
          what: `drill ${BLEED_HOLE} mm to fill and bleed, leak test`,
        },
      ],
      notes: [
        seen,
        'Same outline and holes as the flange, no opening. Any flat plate at least this thick will serve.',
        'For the leak test drill the marked hole, and close it after.',
        ...(holes.length === 0 ? [transfer] : []),
      ],
    }),
  ];
};

/** Sealing land that has no room for a bead beside the holes, mm: common practice, no source. */
const LEAST_LAND = 3;

/** Where the bead of sealant runs: the middle of the narrowest land between opening and holes, one closed line. */
const beadMark = (design: Design, profile: Profile, holes: readonly RoundHole[]): readonly Mark[] => {
  const opening = flangeOpening(design, profile);
  const lands = holes.map(({ at, diameter }) => pathDistance(opening, at) - diameter / 2);
  const land = Math.min(design.engine.rail.land, ...lands);
  if (land < LEAST_LAND) return [];
  const reach = design.pan.sheet.thickness + FLANGE_GAP + land / 2;
  return [
    {
      path: polygonOffset(insideAtRail(design, profile), reach),
      what: 'sealant bead',
    },
  ];
};

/** A place over the pan's inside for the bleed hole: the middle of the opening. */
const holeFreePlace = (design: Design, profile: Profile): Vec2 => {
  const points = insideAtRail(design, profile);
  const sum = points.reduce<Vec2>((s, p) => [s[0] + p[0], s[1] + p[1]], [0, 0]);
  return [sum[0] / points.length, sum[1] / points.length];
};

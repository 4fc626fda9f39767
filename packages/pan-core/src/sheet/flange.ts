import type { Design } from '../design/index.js';
import { pointInPath } from '../geometry/index.js';
import type { Profile } from '../pan/index.js';
import { planeFacet } from './cutter.js';
import { endSealPart } from './end-seal.js';
import { finishPart, marksWithin } from './finish.js';
import { flangeHoles, pilotMark, roundHole } from './flange-hole.js';
import { sealLine } from './flange-line.js';
import { type FlangePiece, flangePieces } from './flange-piece.js';
import { FLANGE_GAP } from './flange-shape.js';
import type { Part } from './part.js';
import { strongbackPart } from './strongback.js';

/** The flange in one piece or two, its end plates and the strongback that matches it, all but the end plates seen from above. */
export const flangeParts = (design: Design, profile: Profile): readonly Part[] => {
  const seen = 'Seen from above, the block’s face up; front of the car at the right.';
  const transfer =
    flangeHoles(design).length === 0 ? ['No holes are drawn: transfer holes from the block.'] : [];
  return [
    ...flangePieces(design, profile).map((piece) => piecePart(design, profile, piece, [seen], transfer)),
    ...design.pan.flange.endSeals.map((seal) => endSealPart(design, seal)),
    strongbackPart(design, profile, [seen, ...transfer]),
  ];
};

const piecePart = (
  design: Design,
  profile: Profile,
  { name, outline, openings }: FlangePiece,
  head: readonly string[],
  foot: readonly string[],
): Part => {
  const holes = flangeHoles(design);
  const own = name === 'flange' ? holes : holes.filter(({ at }) => pointInPath(outline, at) === 'inside');
  const later = own.filter((hole) => hole.later);
  const line = sealLine(design, profile, holes);
  const marks =
    name === 'flange' && openings.length > 0 ? line.marks : marksWithin(line.marks, [outline, ...openings]);
  const { split, thickness } = design.pan.flange;
  return finishPart({
    name,
    what: 'Bolts to the block’s pan rail; the pan passes through it and is welded from below.',
    quantity: 1,
    material: design.pan.sheet.material,
    thickness,
    drawnFace: 'oil side',
    outline,
    openings,
    holes: own.filter((hole) => !hole.later).map(roundHole),
    pilots: later.map(roundHole),
    faces: [planeFacet([0, 0, 0], [1, 0, 0], [0, 1, 0])],
    folds: [],
    marks: [...marks, ...later.map(pilotMark)],
    notes: [
      ...head,
      `The opening is the pan’s outside and ${FLANGE_GAP} mm all round; the sheet passes through and ends flush.`,
      ...line.notes,
      ...(later.length === 0
        ? []
        : [
            `${later.length === 1 ? '1 hole is' : `${later.length} holes are`} only marked: drill after welding and facing, through the strongback’s.`,
          ]),
      ...(own.some(({ kind, fit }) => kind === 'dowel' && fit === 'close')
        ? ['Cut or drill close dowel holes 0.3 mm under size and ream them to the drawing.']
        : []),
      ...(split === null
        ? []
        : [
            `One of two: bevel both edges of the joint to a third of ${thickness} mm from each face, weld them bolted to the strongback, and dress both faces flush before the pan goes in.`,
          ]),
      ...foot,
    ],
  });
};

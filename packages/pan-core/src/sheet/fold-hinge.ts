import {
  add2,
  dot2,
  left2,
  mix2,
  type Path,
  pathPoints,
  pointInPath,
  polylinePath,
  type Region,
  regionPieces,
  scale2,
  subtract2,
  subtractPath,
  unit2,
} from '../geometry/index.js';
import type { Vec2 } from '../numeric/index.js';
import type { Fold, Part } from './part.js';

/** Folds that lie in one line between the same two faces, and are bent at once. */
export interface Hinge {
  readonly folds: readonly Fold[];
  /** Ends of its line. */
  readonly from: Vec2;
  readonly to: Vec2;
  /** Faces at its right and at its left hand, seen from its first end to its second. */
  readonly right: number;
  readonly left: number;
}

/** A flat part as faces that hinges hold together in a tree. */
export interface HingedPart {
  /** Outer edges of the faces, arcs as chords. */
  readonly faces: readonly (readonly Vec2[])[];
  readonly hinges: readonly Hinge[];
}

/** Width of the cut by which faces are told apart, mm, and how far it runs past a fold's ends. */
const CUT = 0.1;
const PAST = [0.2, 2, 6];
/** Chords of a face's arcs, mm. */
const CHORD = 0.5;
/** Lines are one within this, mm. */
const IN_LINE = 0.5;

/** The faces between a part's folds; null where its folds do not part it into a tree of faces. */
export const hingedPart = (part: Part): HingedPart | null => {
  for (const past of PAST) {
    const found = partedBy(part, past);
    if (found !== null) return found;
  }
  return null;
};

const partedBy = (part: Part, past: number): HingedPart | null => {
  const whole: Region = { loops: [part.outline, ...part.openings] };
  const cut = part.folds.reduce<Region>((region, fold) => subtractPath(region, slit(fold, past)), whole);
  const faces = regionPieces(cut).map(({ outline }) => outline);
  const hinges: Hinge[] = [];
  for (const fold of part.folds) {
    const side = left2(unit2(subtract2(fold.to, fold.from)));
    const at = (sign: number): number => {
      // An opening may take a fold's middle.
      const places = [0.5, 0.2, 0.8, 0.05, 0.95].map((t) =>
        add2(mix2(fold.from, fold.to, t), scale2(side, sign * 2 * CUT)),
      );
      return faces.findIndex((face) => places.some((p) => pointInPath(face, p) === 'inside'));
    };
    const [right, left] = [at(-1), at(1)];
    if (right < 0 || left < 0 || right === left) return null;
    const same = hinges.findIndex((h) => isOneLine(h, fold) && pairOf(h) === pairOf({ right, left }));
    if (same < 0) hinges.push({ folds: [fold], from: fold.from, to: fold.to, right, left });
    else hinges[same] = longer(hinges[same]!, fold);
  }
  const joined = new Set(hinges.flatMap(({ right, left }) => [right, left]));
  if (joined.size !== hinges.length + 1) return null;
  return { faces: faces.map((face) => pathPoints(face, CHORD)), hinges };
};

const pairOf = ({ right, left }: Pick<Hinge, 'right' | 'left'>): string =>
  `${Math.min(right, left)} ${Math.max(right, left)}`;

const slit = ({ from, to }: Fold, past: number): Path => {
  const along = unit2(subtract2(to, from));
  const side = scale2(left2(along), CUT / 2);
  const [a, b] = [subtract2(from, scale2(along, past)), add2(to, scale2(along, past))];
  return polylinePath([subtract2(a, side), subtract2(b, side), add2(b, side), add2(a, side)], true);
};

const isOneLine = (hinge: Hinge, { from, to }: Fold): boolean => {
  const side = left2(unit2(subtract2(hinge.to, hinge.from)));
  return [from, to].every((p) => Math.abs(dot2(subtract2(p, hinge.from), side)) < IN_LINE);
};

/** A hinge that reaches over one more stretch of its line. */
const longer = (hinge: Hinge, fold: Fold): Hinge => {
  const along = unit2(subtract2(hinge.to, hinge.from));
  const ends = [hinge.from, hinge.to, fold.from, fold.to].sort((p, q) => dot2(p, along) - dot2(q, along));
  return { ...hinge, folds: [...hinge.folds, fold], from: ends[0]!, to: ends[3]! };
};

import {
  distance2,
  intersectConvexPolygons,
  type Path,
  type Polygon,
  pathPoints,
  polygonArea,
  trapezoids,
} from '../geometry/index.js';
import type { Blank, FlatFold } from './unfold.js';

/** Two pieces of a blank that want the same sheet. */
export interface Overlap {
  /** Leaf numbers; a bend zone counts for the leaf that it was laid from. */
  readonly first: number;
  readonly second: number;
  /** mm² */
  readonly area: number;
}

/** Shared sheet below this is rounding along common edges, mm². */
const ROUNDING = 1e-3;
/** How far a chord may leave its arc when areas are compared, mm. */
const CHORD = 0.01;

/** Sides and areas below this are none, mm and mm². */
const TINY = 1e-9;

interface Patch {
  readonly leaf: number;
  readonly pieces: readonly {
    readonly sign: 1 | -1;
    readonly convex: readonly Polygon[];
    readonly box: Box;
  }[];
}
type Box = readonly [number, number, number, number];

/** Every pair of leaves that overlap in a blank, the largest first; empty when it can be cut. */
export const blankOverlaps = (blank: Blank): readonly Overlap[] => {
  const patches = [
    ...blank.leaves.map((leaf): Patch => ({ leaf, pieces: blank.leafLoops.get(leaf)!.map(pathPiece) })),
    ...blank.folds.filter((f) => f.allowance > 0).map(zonePatch),
  ];
  const found = new Map<string, Overlap>();
  patches.forEach((p, i) => {
    for (const q of patches.slice(i + 1)) {
      const area = sharedArea(p, q);
      if (area < ROUNDING) continue;
      const key = `${p.leaf}/${q.leaf}`;
      found.set(key, { first: p.leaf, second: q.leaf, area: area + (found.get(key)?.area ?? 0) });
    }
  });
  return [...found.values()].sort((a, b) => b.area - a.area);
};

const pathPiece = (loop: Path): Patch['pieces'][number] => piece(pathPoints(loop, CHORD).slice(0, -1));

const piece = (points: Polygon): Patch['pieces'][number] => {
  const area = polygonArea(points);
  const forward = area < 0 ? [...points].reverse() : points;
  const xs = forward.map((p) => p[0]);
  const ys = forward.map((p) => p[1]);
  return {
    sign: area < 0 ? -1 : 1,
    convex: trapezoids(forward).flatMap(({ x0, x1, low, high }): readonly Polygon[] => {
      const corners: Polygon = [
        [x0, low[0]],
        [x1, low[1]],
        [x1, high[1]],
        [x0, high[0]],
      ];
      // A side without length is no line to clip by.
      const kept = corners.filter((p, i) => distance2(p, corners[(i + 1) % corners.length]!) > TINY);
      return kept.length < 3 || polygonArea(kept) < TINY ? [] : [kept];
    }),
    box: [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)],
  };
};

const zonePatch = ({ edge, zone }: FlatFold): Patch => {
  // A zone is sheet whichever way round its corners run.
  return { leaf: edge.a.leaf, pieces: [{ ...piece(zone), sign: 1 }] };
};

const sharedArea = (p: Patch, q: Patch): number => {
  let sum = 0;
  for (const a of p.pieces)
    for (const b of q.pieces) {
      if (a.box[0] >= b.box[2] || b.box[0] >= a.box[2] || a.box[1] >= b.box[3] || b.box[1] >= a.box[3])
        continue;
      for (const s of a.convex)
        for (const t of b.convex) sum += a.sign * b.sign * polygonArea(intersectConvexPolygons(s, t));
    }
  return sum;
};

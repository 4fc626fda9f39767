import { holdsPoint } from '../../geometry/index.js';
import { add3, cross3, dot3, scale3, subtract3, unit3, type Vec2, type Vec3 } from '../../numeric/index.js';

/** A flat face of a picture. */
export interface ViewFace {
  /** The part that it belongs to. */
  readonly name: string;
  readonly loop: readonly Vec3[];
  /** Out of the oil; null for a plate that stands in it. */
  readonly outward: Vec3 | null;
  /** Each edge by its first corner: drawn, or within a bend, where the face beyond it tells; null inside one flat face. */
  readonly edges: readonly ('drawn' | { readonly beyond: Vec3 } | null)[];
}

/** Looks along parallel lines at things in the pan; `away` grows with the distance from the eye. */
export interface Sight {
  readonly flat: (p: Vec3) => Vec2;
  readonly away: (p: Vec3) => number;
}

/** @param eye where the looker stands, from the middle of the pan */
export const sightFrom = (eye: Vec3): Sight => {
  const to = unit3(scale3(eye, -1));
  const right = unit3(cross3(to, [0, 0, 1]));
  const up = cross3(right, to);
  return { flat: (p) => [dot3(right, p), dot3(up, p)], away: (p) => dot3(to, p) };
};

/** Nearer than this is on the face itself, mm. */
const ON = 0.5;

/**
 * Whether no face lies between a point and the eye.
 *
 * @param side of the sheet on which it is seen, where it lies on a face: a weld inside is not seen from outside
 */
export const isSeen = (
  sight: Sight,
  faces: readonly ViewFace[],
  p: Vec3,
  side: 'inside' | 'outside' | null = null,
): boolean => {
  const at = sight.flat(p);
  const depth = sight.away(p);
  let [own, shown] = [0, 0];
  for (const { loop, outward } of faces) {
    if (!holdsPoint(loop.map(sight.flat), at)) continue;
    const over = depthAt(loop, sight, at);
    if (over === null || over > depth + ON) continue;
    if (over < depth - ON) return false;
    if (outward === null || side === null) continue;
    own += 1;
    if (sight.away(outward) < 0 === (side === 'outside')) shown += 1;
  }
  return own === 0 || shown > 0;
};

/** Whether an edge of a face is drawn: a corner, or where a bend turns away from the eye. */
export const isDrawn = (sight: Sight, { outward, edges }: ViewFace, i: number): boolean => {
  const edge = edges[i];
  if (edge === 'drawn') return true;
  if (edge === null || edge === undefined || outward === null) return false;
  return sight.away(outward) < 0 !== sight.away(edge.beyond) < 0;
};

/** Pieces in which a line is tried. */
const PIECES = 32;

/** A line parted where what lies before it begins and ends. */
export const parted = (
  [a, b]: readonly [Vec3, Vec3],
  isSeenAt: (p: Vec3) => boolean,
): readonly { readonly ends: readonly [Vec3, Vec3]; readonly seen: boolean }[] => {
  const on = (t: number): Vec3 => add3(a, scale3(subtract3(b, a), t));
  const seen = Array.from({ length: PIECES }, (_, i) => isSeenAt(on((i + 0.5) / PIECES)));
  const starts = seen.flatMap((now, i) => (i === 0 || now !== seen[i - 1] ? [i] : []));
  return starts.map((from, k) => ({
    ends: [on(from / PIECES), on((starts[k + 1] ?? PIECES) / PIECES)],
    seen: seen[from]!,
  }));
};

/** How far from the eye a face's plane is at a place of the picture; null when it is seen from its edge. */
const depthAt = (loop: readonly Vec3[], sight: Sight, at: Vec2): number | null => {
  const [a, b] = [loop[0]!, loop[1]!];
  const c = loop.find((p) => Math.hypot(...cross3(subtract3(b, a), subtract3(p, a))) > 1e-6);
  if (c === undefined) return null;
  const [p, q, r] = [a, b, c].map(sight.flat) as [Vec2, Vec2, Vec2];
  const det = (q[0] - p[0]) * (r[1] - p[1]) - (r[0] - p[0]) * (q[1] - p[1]);
  if (Math.abs(det) < 1e-6) return null;
  const [x, y] = [at[0] - p[0], at[1] - p[1]];
  const s = (x * (r[1] - p[1]) - y * (r[0] - p[0])) / det;
  const t = ((q[0] - p[0]) * y - (q[1] - p[1]) * x) / det;
  return sight.away(a) + s * (sight.away(b) - sight.away(a)) + t * (sight.away(c) - sight.away(a));
};

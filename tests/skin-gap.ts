import { betweenEdges, toTriangle } from './tetrahedron-gap.js';

export type P = readonly [number, number, number];
export type Corners = readonly [P, P, P];

/** A triangle with the box around it, which says soonest that another is too far away to matter. */
interface SkinPart {
  readonly corners: Corners;
  readonly edges: readonly (readonly [P, P])[];
  /** A sliver without width has edges, and no inside to be near to. */
  readonly wide: boolean;
  readonly low: P;
  readonly high: P;
}

const minus = (a: P, b: P): P => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const cross = ([a, b, c]: P, [d, e, f]: P): P => [b * f - c * e, c * d - a * f, a * e - b * d];
const dot = (a: P, b: P): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const apart = (a: P, b: P): number => {
  const [x, y, z] = [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
  return Math.sqrt(x * x + y * y + z * z);
};

export const skinOf = (triangles: readonly Corners[]): readonly SkinPart[] =>
  triangles.map((corners) => {
    const [a, b, c] = corners;
    const long = (
      [
        [a, b],
        [b, c],
        [c, a],
      ] as const
    ).filter(([p, q]) => apart(p, q) > 1e-9);
    return {
      corners,
      // Three corners in one place are as good as an edge that is too short to matter.
      edges: long.length > 0 ? long : [[a, [a[0] + 1e-8, a[1], a[2]]]],
      wide: apart(cross(minus(b, a), minus(c, a)), [0, 0, 0]) > 1e-6,
      low: [Math.min(a[0], b[0], c[0]), Math.min(a[1], b[1], c[1]), Math.min(a[2], b[2], c[2])],
      high: [Math.max(a[0], b[0], c[0]), Math.max(a[1], b[1], c[1]), Math.max(a[2], b[2], c[2])],
    };
  });

/** A flat loop as triangles. */
export const fan = (loop: readonly P[]): readonly Corners[] =>
  loop.slice(2).map((c, i): Corners => [loop[0] as P, loop[i + 1] as P, c]);

/**
 * The least distance over every pair of triangles, 0 where two cross: corner against triangle and edge against
 * edge, no tree and no body. A pair is passed over only when the boxes around the two are farther apart than what
 * was found.
 */
export const skinGap = (one: readonly SkinPart[], other: readonly SkinPart[]): number => {
  let least = Number.POSITIVE_INFINITY;
  for (const a of one)
    for (const b of other) if (boxGap(a, b) < least) least = Math.min(least, partGap(a, b));
  return least;
};

const boxGap = (a: SkinPart, b: SkinPart): number => {
  const x = Math.max(0, a.low[0] - b.high[0], b.low[0] - a.high[0]);
  const y = Math.max(0, a.low[1] - b.high[1], b.low[1] - a.high[1]);
  const z = Math.max(0, a.low[2] - b.high[2], b.low[2] - a.high[2]);
  return Math.sqrt(x * x + y * y + z * z);
};

const partGap = (a: SkinPart, b: SkinPart): number => {
  let least = Number.POSITIVE_INFINITY;
  for (const [x, y] of [
    [a, b],
    [b, a],
  ] as const) {
    if (!y.wide) continue;
    for (const p of x.corners) least = Math.min(least, toTriangle(p, y.corners));
    if (x.edges.some((e) => pierces(e, y.corners))) return 0;
  }
  for (const e of a.edges) for (const f of b.edges) least = Math.min(least, betweenEdges(e, f));
  return least;
};

/** Whether an edge runs through the inside of a triangle: its ends on either side, and past each edge on the same. */
const pierces = ([p, q]: readonly [P, P], [a, b, c]: Corners): boolean => {
  const volume = (u: P, v: P, w: P, x: P): number =>
    Math.sign(dot(cross(minus(v, u), minus(w, u)), minus(x, u)));
  if (volume(a, b, c, p) * volume(a, b, c, q) >= 0) return false;
  const turns = [volume(p, q, a, b), volume(p, q, b, c), volume(p, q, c, a)];
  return turns.every((s) => s > 0) || turns.every((s) => s < 0);
};

interface Convex {
  readonly vertices: readonly P[];
  readonly faces: readonly (readonly number[])[];
}

/** Tells whether a point lies in a convex solid: on the same side of every face as the solid's own middle. */
export const insideOf = ({ vertices, faces }: Convex): ((p: P) => boolean) => {
  const middle = [0, 1, 2].map((k) => vertices.reduce((sum, v) => sum + v[k]!, 0) / vertices.length);
  const planes = faces.map((face) => {
    // Corners far apart, as neighbours may lie in a line.
    const [a, b, c] = [0, 1, 2].map((i) => vertices[face[Math.floor((i * face.length) / 3)]!]) as [P, P, P];
    const normal = cross(minus(b, a), minus(c, a));
    const out = dot(normal, minus(middle as unknown as P, a)) > 0 ? -1 : 1;
    return { normal, at: dot(normal, a), out };
  });
  return (p) => planes.every(({ normal, at, out }) => out * (dot(normal, p) - at) <= 0);
};

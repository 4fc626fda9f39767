import type { Path } from '../geometry/index.js';
import { framePoint, polylinePath } from '../geometry/index.js';
import type { Vec2, Vec3 } from '../numeric/index.js';
import { dot3, subtract3 } from '../numeric/index.js';

/** The points with normal·p ≤ offset. */
export interface HalfSpace {
  readonly normal: Vec3;
  readonly offset: number;
}

/** A convex solid whose meeting with the sheet is cut out of it. */
export type Cutter = readonly HalfSpace[];

/**
 * A flat stretch of the pan's inside face and where it lies in the blank: the point origin + s·u + t·v
 * lands on at + s·along + t·across. In a bend zone `along` is stretched to the zone's flat length.
 */
export interface Facet {
  readonly origin: Vec3;
  readonly u: Vec3;
  readonly v: Vec3;
  /** Limits of the stretch in (s, t), convex, counter-clockwise. */
  readonly bounds: readonly Vec2[];
  readonly at: Vec2;
  readonly along: Vec2;
  readonly across: Vec2;
  readonly bend: boolean;
}

/** Larger than any pan, mm: stands for "unbounded" in a facet's limits. */
export const FAR = 1e4;

/** A whole plane as one flat stretch, drawn in its own axes. */
export const planeFacet = (origin: Vec3, u: Vec3, v: Vec3): Facet => ({
  origin,
  u,
  v,
  bounds: [
    [-FAR, -FAR],
    [FAR, -FAR],
    [FAR, FAR],
    [-FAR, FAR],
  ],
  at: [0, 0],
  along: [1, 0],
  across: [0, 1],
  bend: false,
});

/** A facet of a blank that is turned over left for right. */
export const mirroredFacet = (facet: Facet): Facet => {
  const over = ([x, y]: Vec2): Vec2 => [-x, y];
  return { ...facet, at: over(facet.at), along: over(facet.along), across: over(facet.across) };
};

export const facetFlat = (f: Facet, [s, t]: Vec2): Vec2 => [
  f.at[0] + s * f.along[0] + t * f.across[0],
  f.at[1] + s * f.along[1] + t * f.across[1],
];

export const facetLocal = (f: Facet, p: Vec3): Vec2 => {
  const r = subtract3(p, f.origin);
  return [dot3(r, f.u), dot3(r, f.v)];
};

/** The part of a convex polygon where a·s + b·t ≤ c. */
const clipTo = (polygon: readonly Vec2[], a: number, b: number, c: number): readonly Vec2[] => {
  const height = (p: Vec2): number => a * p[0] + b * p[1] - c;
  return polygon.flatMap((p, i): readonly Vec2[] => {
    const q = polygon[(i + 1) % polygon.length]!;
    const [hp, hq] = [height(p), height(q)];
    const kept: Vec2[] = hp <= 0 ? [p] : [];
    if ((hp < 0 && hq > 0) || (hp > 0 && hq < 0)) {
      const t = hp / (hp - hq);
      kept.push([p[0] + t * (q[0] - p[0]), p[1] + t * (q[1] - p[1])]);
    }
    return kept;
  });
};

/** What a cutter takes out of a facet, as a closed loop in the blank; null when it misses. */
export const footprint = (facet: Facet, cutter: Cutter): Path | null => {
  let rest: readonly Vec2[] = facet.bounds;
  for (const { normal, offset } of cutter) {
    const [a, b] = [dot3(normal, facet.u), dot3(normal, facet.v)];
    rest = clipTo(rest, a, b, offset - dot3(normal, facet.origin));
    if (rest.length < 3) return null;
  }
  const loop = rest.map((p) => facetFlat(facet, p));
  const kept = loop.filter((p, i) => {
    const q = loop[(i + 1) % loop.length]!;
    return Math.hypot(p[0] - q[0], p[1] - q[1]) > 1e-9;
  });
  if (kept.length < 3 || Math.abs(loopArea(kept)) < 1e-6) return null;
  return polylinePath(kept, true);
};

const loopArea = (loop: readonly Vec2[]): number =>
  loop.reduce((sum, p, i) => {
    const q = loop[(i + 1) % loop.length]!;
    return sum + (p[0] * q[1] - q[0] * p[1]) / 2;
  }, 0);

/** Where a point of the inside face lies in the blank; null when no facet carries it within `within` mm. */
export const locate = (
  facets: readonly Facet[],
  p: Vec3,
  within: number,
): { readonly at: Vec2; readonly facet: Facet } | null => {
  let best: { at: Vec2; facet: Facet } | null = null;
  let least = within;
  for (const facet of facets) {
    const local = facetLocal(facet, p);
    const away = Math.hypot(...subtract3(p, framePoint(facet, local)));
    if (away > least || !inside(facet.bounds, local)) continue;
    least = away;
    best = { at: facetFlat(facet, local), facet };
  }
  return best;
};

/** The point of the pan's inside that a place of the blank becomes; null where no flat stretch carries it. */
export const facetAbove = (facets: readonly Facet[], p: Vec2): Vec3 | null => {
  for (const facet of facets) {
    const local = localOfFlat(facet, p);
    if (!facet.bend && inside(facet.bounds, local)) return framePoint(facet, local);
  }
  return null;
};

/** What of a straight line of the blank lies on a facet, as its ends on the pan's inside; null when it misses. */
export const facetStretch = (facet: Facet, from: Vec2, to: Vec2): readonly [Vec3, Vec3] | null => {
  const [a, b] = [localOfFlat(facet, from), localOfFlat(facet, to)];
  let [start, end] = [0, 1];
  const { bounds } = facet;
  bounds.forEach((p, i) => {
    const q = bounds[(i + 1) % bounds.length]!;
    const side = (r: Vec2): number => (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0]);
    const [sa, sb] = [side(a), side(b)];
    if (sa < 0 && sb < 0) end = -1;
    else if (sa < 0) start = Math.max(start, sa / (sa - sb));
    else if (sb < 0) end = Math.min(end, sa / (sa - sb));
  });
  if (end - start < 1e-9) return null;
  const at = (t: number): Vec3 => framePoint(facet, [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])]);
  return [at(start), at(end)];
};

const localOfFlat = ({ at, along, across }: Facet, p: Vec2): Vec2 => {
  const area = along[0] * across[1] - along[1] * across[0];
  const [x, y] = [p[0] - at[0], p[1] - at[1]];
  return [(x * across[1] - y * across[0]) / area, (along[0] * y - along[1] * x) / area];
};

const inside = (polygon: readonly Vec2[], p: Vec2): boolean =>
  polygon.every((a, i) => {
    const b = polygon[(i + 1) % polygon.length]!;
    return (b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0]) >= -1e-9;
  });

import { cross3, dot3, subtract3, unit3, type Vec3 } from '../numeric/index.js';
import { type Bounds, boundsOf, loopNormal } from './convex-solid.js';

/** A flat convex piece of a surface, ready for distances; `from` says which face of which solid it comes from. */
export interface Facet {
  readonly loop: readonly Vec3[];
  readonly normal: Vec3;
  readonly offset: number;
  /** Per edge, the unit vector in the facet's plane that points inward. */
  readonly inward: readonly Vec3[];
  /** Per edge, `inward`·p on the edge. */
  readonly inset: readonly number[];
  readonly bounds: Bounds;
  readonly from: { readonly solid: number; readonly face: number };
}

/** Corners nearer to the next than this are one corner, mm. */
const SAME = 1e-12;

export const facetOf = (corners: readonly Vec3[], from: Facet['from']): Facet => {
  const loop = corners.filter((p, i) => {
    const q = corners[(i + 1) % corners.length]!;
    return Math.hypot(p[0] - q[0], p[1] - q[1], p[2] - q[2]) > SAME;
  });
  const normal = unit3(loopNormal(loop));
  const inward = loop.map((a, i) => unit3(cross3(normal, subtract3(loop[(i + 1) % loop.length]!, a))));
  const inset = loop.map((a, i) => dot3(inward[i]!, a));
  return { loop, normal, offset: dot3(normal, loop[0]!), inward, inset, bounds: boundsOf(loop), from };
};

/** No more than the distance from a point to a facet, and quick. */
export const leastToFacet = ({ bounds: { low, high } }: Facet, p: Vec3): number => {
  const x = Math.max(low[0] - p[0], 0, p[0] - high[0]);
  const y = Math.max(low[1] - p[1], 0, p[1] - high[1]);
  const z = Math.max(low[2] - p[2], 0, p[2] - high[2]);
  return Math.sqrt(x * x + y * y + z * z);
};

export interface NearestFacet {
  readonly facet: Facet;
  readonly distance: number;
}

/** The facet nearest to a point; null when there is none. */
export const nearestFacet = (facets: readonly Facet[], p: Vec3): NearestFacet | null => {
  let best: Facet | null = null;
  let distance = Number.POSITIVE_INFINITY;
  for (const facet of facets) {
    if (leastToFacet(facet, p) >= distance) continue;
    const d = distanceToFacet(facet, p, distance);
    if (d < distance) {
      distance = d;
      best = facet;
    }
  }
  return best === null ? null : { facet: best, distance };
};

/** Distance from a point to a facet; infinite when it is not under `limit`. */
export const distanceToFacet = (facet: Facet, p: Vec3, limit = Number.POSITIVE_INFINITY): number => {
  const { loop, inward, inset } = facet;
  const height = Math.abs(dot3(facet.normal, p) - facet.offset);
  if (height >= limit) return Number.POSITIVE_INFINITY;
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < loop.length; i++) {
    if (dot3(inward[i]!, p) >= inset[i]!) continue;
    least = Math.min(least, distanceToEdge(loop[i]!, loop[(i + 1) % loop.length]!, p));
  }
  return least === Number.POSITIVE_INFINITY ? height : least;
};

const distanceToEdge = (a: Vec3, b: Vec3, p: Vec3): number => {
  const [ex, ey, ez] = [b[0] - a[0], b[1] - a[1], b[2] - a[2]];
  const [px, py, pz] = [p[0] - a[0], p[1] - a[1], p[2] - a[2]];
  const t = Math.min(1, Math.max(0, (px * ex + py * ey + pz * ez) / (ex * ex + ey * ey + ez * ez)));
  const [x, y, z] = [px - t * ex, py - t * ey, pz - t * ez];
  return Math.sqrt(x * x + y * y + z * z);
};

/** Whether every facet is farther from a point than a distance. */
export const allBeyond = (facets: readonly Facet[], p: Vec3, distance: number): boolean =>
  facets.every((facet) => leastToFacet(facet, p) > distance || distanceToFacet(facet, p) > distance);

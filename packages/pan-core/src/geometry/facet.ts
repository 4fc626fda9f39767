import { cross3, dot3, scale3, subtract3, unit3, type Vec3 } from '../numeric/index.js';
import { loopNormal } from './convex-solid.js';

/** A flat convex piece of a surface, ready for distances; `from` says which face of which solid it comes from. */
export interface Facet {
  readonly loop: readonly Vec3[];
  readonly normal: Vec3;
  readonly offset: number;
  /** Per edge, the unit vector in the facet's plane that points inward. */
  readonly inward: readonly Vec3[];
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
  return { loop, normal, offset: dot3(normal, loop[0]!), inward, from };
};

/** Distance from a point to a facet. */
export const distanceToFacet = (facet: Facet, p: Vec3): number => {
  const { loop, inward } = facet;
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < loop.length; i++) {
    const a = loop[i]!;
    if (dot3(inward[i]!, p) >= dot3(inward[i]!, a)) continue;
    least = Math.min(least, distanceToEdge(a, loop[(i + 1) % loop.length]!, p));
  }
  return least === Number.POSITIVE_INFINITY ? Math.abs(dot3(facet.normal, p) - facet.offset) : least;
};

const distanceToEdge = (a: Vec3, b: Vec3, p: Vec3): number => {
  const e = subtract3(b, a);
  const t = Math.min(1, Math.max(0, dot3(subtract3(p, a), e) / dot3(e, e)));
  const d = subtract3(subtract3(p, a), scale3(e, t));
  return Math.hypot(d[0], d[1], d[2]);
};

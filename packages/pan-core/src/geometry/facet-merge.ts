import { dot3, type Vec2, type Vec3 } from '../numeric/index.js';
import { boundsGap } from './convex-solid.js';
import { type Facet, facetOf } from './facet.js';
import { flatAxes } from './plane.js';

/**
 * Joins facets that lie in one plane, look the same way and together make a convex facet, again and again.
 * Fewer and wider facets leave distances as they were and give branch and bound fewer seams to look at.
 *
 * @param slit Gaps no wider than this between two facets are closed, mm.
 */
export const mergedFacets = (facets: readonly Facet[], slit: number): readonly Facet[] => {
  const done: Facet[] = [];
  for (const group of planesOf(facets, slit)) {
    const rest = [...group];
    for (let facet = rest.pop(); facet !== undefined; facet = rest.pop()) {
      let joined: Facet | null = null;
      for (let i = 0; i < rest.length && joined === null; i++) {
        joined = join(facet, rest[i]!, slit);
        if (joined !== null) rest[i] = joined;
      }
      if (joined === null) done.push(facet);
    }
  }
  return done;
};

const planesOf = (facets: readonly Facet[], slit: number): readonly (readonly Facet[])[] => {
  const groups: Facet[][] = [];
  for (const facet of facets) {
    const same = groups.find(
      ([first]) =>
        Math.abs(first!.offset - facet.offset) <= slit && dot3(first!.normal, facet.normal) > 1 - 1e-14,
    );
    if (same === undefined) groups.push([facet]);
    else same.push(facet);
  }
  return groups;
};

const join = (a: Facet, b: Facet, slit: number): Facet | null => {
  if (boundsGap(a.bounds, b.bounds) > 2 * slit) return null;
  const { u, v } = flatAxes(a.normal);
  const flat = (p: Vec3): Vec2 => [p[u], p[v]];
  const hull = hullOf([...a.loop, ...b.loop], flat);
  const [whole, first, second] = [hull, a.loop, b.loop].map((loop) => area(loop.map(flat)));
  // More than both is a hollow that the hull bridges; less is a corner that it lost.
  if (Math.abs(whole! - first! - second!) > 4 * slit * around(hull.map(flat))) return null;
  return facetOf(hull, first! >= second! ? a.from : b.from);
};

const area = (p: readonly Vec2[]): number =>
  p.reduce((sum, a, i) => {
    const b = p[(i + 1) % p.length]!;
    return sum + (a[0] * b[1] - b[0] * a[1]) / 2;
  }, 0);

const around = (p: readonly Vec2[]): number =>
  p.reduce((sum, a, i) => {
    const b = p[(i + 1) % p.length]!;
    return sum + Math.hypot(b[0] - a[0], b[1] - a[1]);
  }, 0);

/** Convex hull, counter-clockwise when flattened, points on a straight edge left out (monotone chain). */
const hullOf = (points: readonly Vec3[], flat: (p: Vec3) => Vec2): readonly Vec3[] => {
  const sorted = [...points].sort((p, q) => flat(p)[0] - flat(q)[0] || flat(p)[1] - flat(q)[1]);
  const half = (list: readonly Vec3[]): readonly Vec3[] => {
    const out: Vec3[] = [];
    for (const p of list) {
      while (out.length > 1 && !turnsLeft(flat(out[out.length - 2]!), flat(out[out.length - 1]!), flat(p))) {
        out.pop();
      }
      out.push(p);
    }
    return out.slice(0, -1);
  };
  return straightened([...half(sorted), ...half([...sorted].reverse())], flat);
};

const turnsLeft = (a: Vec2, b: Vec2, c: Vec2): boolean =>
  (b[0] - a[0]) * (c[1] - b[1]) - (b[1] - a[1]) * (c[0] - b[0]) > 0;

/** Bulges under a ten-millionth of a millimetre are slits between the facets and no corners. */
const BULGE = 1e-7;

const straightened = (loop: readonly Vec3[], flat: (p: Vec3) => Vec2): readonly Vec3[] => {
  const out: Vec3[] = [];
  loop.forEach((p, i) => {
    const next = loop[(i + 1) % loop.length]!;
    const before = out[out.length - 1] ?? loop[loop.length - 1]!;
    if (!between(flat(before), flat(p), flat(next))) out.push(p);
  });
  return out;
};

/** Whether b is on the way from a to c: a corner past either end is one however little it turns. */
const between = (a: Vec2, b: Vec2, c: Vec2): boolean => {
  const [x, y] = [c[0] - a[0], c[1] - a[1]];
  const long = Math.hypot(x, y);
  const along = x * (b[0] - a[0]) + y * (b[1] - a[1]);
  const aside = x * (b[1] - a[1]) - y * (b[0] - a[0]);
  return Math.abs(aside) <= BULGE * long && along >= 0 && along <= long * long;
};

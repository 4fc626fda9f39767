import type { Vec3 } from '../numeric/index.js';
import { type Deepest, type DepthBody, type RoundHull, within } from './convex-depth.js';
import { hullGap } from './convex-distance.js';
import { nearestFacet } from './facet.js';

/** Points less deep than the deepest by no more than this are as deep, mm. */
const AS_DEEP = 1e-3;
const HALVINGS = 24;
/** Farther than any pan is long, mm. */
const FAR = 4096;

/**
 * Where a whole stretch of a hull is as deep, the search for the deepest point ends at some corner of it, and
 * what is nearest there is chance. This moves the point to the middle of the stretch along each axis in turn.
 */
export const deepestMiddle = (body: DepthBody, hull: RoundHull, deepest: Deepest): Deepest => {
  if (deepest.facet === null) return deepest;
  const start = nearestFacet(body.boundary, deepest.at)?.distance ?? 0;
  const asDeep = (p: Vec3): boolean =>
    hullGap([p], hull.points).distance <= hull.radius + AS_DEEP &&
    body.spaces.some((space) => within(space, p)) &&
    (nearestFacet(body.boundary, p)?.distance ?? 0) >= start - AS_DEEP;
  let at = deepest.at;
  for (const k of [0, 1, 2] as const) {
    const moved = (by: number): Vec3 => [
      at[0] + (k === 0 ? by : 0),
      at[1] + (k === 1 ? by : 0),
      at[2] + (k === 2 ? by : 0),
    ];
    const reach = (sign: 1 | -1): number => {
      let [good, bad] = [0, FAR];
      for (let i = 0; i < HALVINGS; i++) {
        const middle = (good + bad) / 2;
        if (asDeep(moved(sign * middle))) good = middle;
        else bad = middle;
      }
      return sign * good;
    };
    at = moved((reach(1) + reach(-1)) / 2);
  }
  const near = nearestFacet(body.boundary, at);
  return near === null || !asDeep(at) ? deepest : { depth: deepest.depth, at, facet: near.facet };
};

import type { Design } from '../design/index.js';
import type { Vec2, Vec3 } from '../numeric/index.js';
import { type Facet, facetFlat, facetLocal, facetPoint } from './cutter.js';
import type { RoundHole } from './part.js';

/** The lowest place of the strip under a point of the plan; null when the strip does not pass there. */
export const floorUnder = (
  facets: readonly Facet[],
  [x, y]: Vec2,
): { readonly at: Vec2; readonly point: Vec3; readonly facet: Facet } | null => {
  let best: { at: Vec2; point: Vec3; facet: Facet } | null = null;
  for (const facet of facets) {
    if (Math.abs(facet.u[0]) < 1e-9) continue;
    const s = (x - facet.origin[0]) / facet.u[0];
    const end = facet.bounds[1]![0];
    if (s < 0 || s > end) continue;
    const point = facetPoint(facet, [s, y]);
    if (best === null || point[2] < best.point[2]) {
      best = { at: facetFlat(facet, facetLocal(facet, point)), point, facet };
    }
  }
  return best;
};

/** Holes in the belly: the drain's bung. */
export const bellyHoles = (design: Design, facets: readonly Facet[]): readonly RoundHole[] => {
  const { drain } = design;
  if (drain === null) return [];
  const place = floorUnder(facets, drain.at);
  if (place === null) return [];
  const thread = `M${drain.thread.diameter}x${drain.thread.pitch}`;
  return [{ at: place.at, diameter: drain.bung, what: `drain bung ${thread}, welded in from outside` }];
};

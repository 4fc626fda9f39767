import type { Design } from '../design/index.js';
import { circlePath } from '../geometry/index.js';
import type { Vec2, Vec3 } from '../numeric/index.js';
import { type Facet, facetFlat, facetLocal, facetPoint, locate } from './cutter.js';
import type { Mark, RoundHole } from './part.js';

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

/** Circle on the floor over which the pickup's mouth stands. */
export const mouthMark = (design: Design, facets: readonly Facet[]): readonly Mark[] => {
  const place = floorUnder(facets, design.pickup.at);
  if (place === null || place.facet.bend) return [];
  return [
    {
      path: circlePath(place.at, design.pickup.mouth / 2),
      what: `pickup mouth, ${design.pickup.gap} mm above`,
    },
  ];
};

/** Bungs whose seat lies on one of the faces, within the sheet's thickness of it. */
export const bungHoles = (design: Design, facets: readonly Facet[]): readonly RoundHole[] =>
  design.bungs.flatMap((bung): readonly RoundHole[] => {
    const place = locate(facets, bung.at, design.pan.sheet.thickness + 0.5);
    return place === null
      ? []
      : [{ at: place.at, diameter: bung.diameter, what: `${bung.name}, ${bung.purpose} bung` }];
  });

/** Holes in the belly: the drain's bung and those bungs that sit on it. */
export const bellyHoles = (design: Design, facets: readonly Facet[]): readonly RoundHole[] => [
  ...drainHole(design, facets),
  ...bungHoles(design, facets),
];

const drainHole = (design: Design, facets: readonly Facet[]): readonly RoundHole[] => {
  const { drain } = design;
  if (drain === null) return [];
  const place = floorUnder(facets, drain.at);
  if (place === null) return [];
  const thread = `M${drain.thread.diameter}x${drain.thread.pitch}`;
  return [{ at: place.at, diameter: drain.bung, what: `drain bung ${thread}, welded in from outside` }];
};

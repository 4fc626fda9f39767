import type { Bung, Design } from '../design/index.js';
import { circlePath, framePoint } from '../geometry/index.js';
import { cross3, dot3, subtract3, unit3, type Vec2, type Vec3 } from '../numeric/index.js';
import { type Facet, facetFlat, facetLocal, locate } from './cutter.js';
import type { Mark, RoundHole } from './part.js';

/** What the drain's own bung is called among the others. */
export const THE_DRAIN = 'the drain';

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
    const point = framePoint(facet, [s, y]);
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
      what: `pickup mouth, ${design.pickup.gap.toFixed(1).replace(/\.0$/, '')} mm above`,
    },
  ];
};

/** Bungs whose seat lies on one of the faces, within the sheet's thickness of it. */
export const bungHoles = (design: Design, facets: readonly Facet[]): readonly RoundHole[] =>
  design.bungs.flatMap((bung): readonly RoundHole[] => {
    const place = locate(facets, bung.at, design.pan.sheet.thickness + 0.5);
    if (place === null) return [];
    const tilt = tiltOn(place.facet, bung);
    return [{ at: place.at, diameter: bung.diameter, what: bungWords(bung, tilt), bung: bung.name, tilt }];
  });

/** What a bung's hole is called on its drawing; an axis that stands askew needs its hole drawn out. */
const bungWords = ({ name, purpose, thread, diameter }: Bung, tilt: number): string => {
  const size = thread === undefined ? '' : ` M${thread.diameter}x${thread.pitch}`;
  const oval =
    tilt < SQUARE
      ? ''
      : `, ${((tilt * 180) / Math.PI).toFixed(0)} deg askew: file the hole ${(diameter / Math.cos(tilt)).toFixed(1)} long`;
  return `${name}, ${purpose} bung${size}${oval}`;
};

/** An axis this near to square needs no oval, radians. */
const SQUARE = Math.PI / 90;

/** How far a bung's axis leans from square to the face it sits on, radians, 0–π/2. */
const tiltOn = ({ u, v }: Facet, bung: Bung): number => {
  const axis = unit3(subtract3(bung.toward, bung.at));
  return Math.acos(Math.min(1, Math.abs(dot3(unit3(cross3(u, v)), axis))));
};

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
  const what = `drain bung ${thread}, welded in from outside`;
  return [{ at: place.at, diameter: drain.bung, what, bung: THE_DRAIN }];
};

import type { Design } from '../design/index.js';
import { arcSegment, left2, subtract2, unit2 } from '../geometry/index.js';
import { add3, cross3, scale3, unit3, type Vec2, type Vec3 } from '../numeric/index.js';
import { railHalfChord } from '../pan/index.js';
import { type Facet, facetFlat, facetLocal, locate } from './cutter.js';
import type { Mark } from './part.js';

/** Nearer than this a rail edge and a wall's top are one, mm. */
const SAME = 1e-6;

/** Where an end wall is trimmed to its end plate's arc, on the blank that has this wall. */
export const endSealMarks = (design: Design, facets: readonly Facet[]): readonly Mark[] =>
  design.pan.flange.endSeals.flatMap((seal): readonly Mark[] => {
    const { floor } = design.pan;
    const wall = seal.end === 'rear' ? floor[floor.length - 1]! : floor[0]!;
    const top: Vec3 = [wall[0], seal.across, 0];
    const place = locate(facets, top, SAME);
    if (place === null || place.facet.bend) return [];
    const { radius, centreAboveRail: c } = seal;
    const half = railHalfChord(radius, c);
    const down = unit2(subtract2(flatAt(place.facet, add3(top, downThe(place.facet))), place.at));
    const along = left2(down);
    const at = (u: number, v: number): Vec2 => [
      place.at[0] + u * along[0] + v * down[0],
      place.at[1] + u * along[1] + v * down[1],
    ];
    const arc = arcSegment(at(0, -c), at(-half, 0), at(half, 0), 2 * Math.acos(c / radius));
    return [{ path: [arc], what: 'trim to the end plate after welding' }];
  });

const flatAt = (facet: Facet, p: Vec3): Vec2 => facetFlat(facet, facetLocal(facet, p));

/** Straight down an end wall, which runs square across the car. */
const downThe = ({ u, v }: Facet): Vec3 => {
  const d = unit3(cross3(cross3(u, v), [0, 1, 0]));
  return scale3(d, d[2] < 0 ? 1 : -1);
};

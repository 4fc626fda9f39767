import { type ConvexSolid, halfSpacesOf, type Swing } from '../geometry/index.js';
import { dot3, type Vec3 } from '../numeric/index.js';
import type { Body } from './body.js';
import { swingOf } from './least-gap.js';
import type { ScanBox } from './scan-box.js';

/** A solid of the body as planes and a box: what bounds its distance to a box quickly. */
export interface Wall {
  readonly vertices: readonly Vec3[];
  readonly middle: Vec3;
  readonly half: Vec3;
  /** Four to a plane: unit normal and offset. */
  readonly planes: Float64Array;
  /** The plane that parted this solid from some triangle last; it often parts the next one too. */
  readonly aside: Float64Array;
}

export const wallsOf = (body: Body): readonly Wall[] =>
  body.solids.map((solid, i) => {
    const { low, high } = body.bounds[i]!;
    return {
      vertices: solid.vertices,
      middle: [(low[0] + high[0]) / 2, (low[1] + high[1]) / 2, (low[2] + high[2]) / 2],
      half: [(high[0] - low[0]) / 2, (high[1] - low[1]) / 2, (high[2] - low[2]) / 2],
      planes: planesOf(solid),
      aside: new Float64Array(4),
    };
  });

const planesOf = (solid: ConvexSolid): Float64Array =>
  Float64Array.from(halfSpacesOf(solid).flatMap(({ normal, offset }) => [...normal, offset]));

/** Keeps the plane along `toward` that touches the solid, for the next look. */
export const rememberPlane = (wall: Wall, toward: Vec3): void => {
  let reach = Number.NEGATIVE_INFINITY;
  for (const p of wall.vertices) reach = Math.max(reach, dot3(toward, p));
  wall.aside.set([toward[0], toward[1], toward[2], reach]);
};

/** No more than the gap to some points through a swing, by the plane that was remembered. */
export const overKnownPlane = (
  { aside }: Wall,
  points: readonly Vec3[],
  height: number,
  swing: Swing,
): number => {
  const [x, y, z, reach] = [aside[0]!, aside[1]!, aside[2]!, aside[3]!];
  if (swing.sin !== 0) return -swingOf(points, [-x, -y, -z], height, swing) - reach;
  let least = Number.POSITIVE_INFINITY;
  for (const p of points) least = Math.min(least, x * p[0] + y * p[1] + z * p[2]);
  return least - reach;
};

/**
 * No more than the distance from a solid to a box, 0 when they may meet: the gap along the axes or over any of
 * the solid's planes, whichever is most. Stops as soon as it is `enough`.
 */
export const leastToBox = (wall: Wall, box: ScanBox, enough: number): number => {
  const { middle, half, planes, aside } = wall;
  const dx = Math.max(0, Math.abs(box.x - middle[0]) - box.halfX - half[0]);
  const dy = Math.max(0, Math.abs(box.y - middle[1]) - box.halfY - half[1]);
  const dz = Math.max(0, Math.abs(box.z - middle[2]) - box.halfZ - half[2]);
  const apart = Math.sqrt(dx * dx + dy * dy + dz * dz);
  if (apart >= enough) return apart;
  const past = Math.max(apart, overPlane(aside, 0, box));
  return past >= enough ? past : Math.max(past, overPlanes(planes, box));
};

const overPlanes = (planes: Float64Array, box: ScanBox): number => {
  let most = 0;
  for (let o = 0; o < planes.length; o += 4) {
    const over = overPlane(planes, o, box);
    if (over > most) most = over;
  }
  return most;
};

const overPlane = (planes: Float64Array, o: number, box: ScanBox): number => {
  const x = planes[o]!;
  const y = planes[o + 1]!;
  const z = planes[o + 2]!;
  const at = x * box.x + y * box.y + z * box.z - planes[o + 3]!;
  return at - Math.abs(x) * box.halfX - Math.abs(y) * box.halfY - Math.abs(z) * box.halfZ;
};

import type { Design } from '../design/index.js';
import type { Vec3 } from '../numeric/index.js';
import { depthAt, formedFloor } from './floor-line.js';
import type { Profile } from './profile.js';
import { BEND_RADIUS, type TubeList, tubeBends } from './tube-bend.js';

/** Middle of the mouth's rim over the formed floor; null outside the pan. */
const mouthOf = ({ pickup }: Design, profile: Profile): Vec3 | null => {
  const [x, y] = pickup.at;
  const down = depthAt(formedFloor(profile), x);
  return down === null ? null : [x, y, pickup.gap - down];
};

/** Outside diameter of the pickup's tube, mm. */
export const tubeOutside = ({ pickup: { bore, wall } }: Design): number => bore + 2 * wall;

/**
 * The pickup's tube from mouth to port as it is bent, at the usual radius; null where its way is not given.
 *
 * @throws PanError `shape-fold` where two bends need more length than lies between their corners
 */
export const pickupTube = (design: Design, profile: Profile): TubeList | null => {
  const { route } = design.pickup;
  const port = design.engine.pumpInlet;
  const mouth = mouthOf(design, profile);
  if (mouth === null || route.length === 0 || (route.length < 2 && port === null)) return null;
  const points = [mouth, ...route, ...(port === null ? [] : [port])];
  return tubeBends(points, BEND_RADIUS * tubeOutside(design));
};

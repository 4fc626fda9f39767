import { type Design, STAY } from '../design/index.js';
import { add3, scale3, type Vec3 } from '../numeric/index.js';
import { type PickupStay, type Profile, pickupStay } from '../pan/index.js';
import type { BodySolid } from './body.js';
import { prism } from './prism.js';

/** Foot and arm of the pickup's stay as boxes, its fold square; none where the design asks for no stay. */
export const staySolids = (design: Design, profile: Profile): readonly BodySolid[] => {
  const stay = pickupStay(design, profile);
  if (stay === null) return [];
  const { thickness, foot, arm } = stay;
  const far = foot.length - foot.hole;
  return [box(stay, [-foot.hole, far], thickness), box(stay, [far - thickness, far], arm.length)];
};

/** A block of the strip's width between two distances from the bolt, hanging down from the seat. */
const box = (stay: PickupStay, [from, to]: readonly [number, number], depth: number): BodySolid => {
  const { seat, along, toward, width } = stay;
  const corner = (far: number, aside: number): Vec3 =>
    add3(seat, add3(scale3(toward, far), add3(scale3(along, aside * width), [0, 0, -depth])));
  const base = [corner(from, 0.5), corner(from, -0.5), corner(to, -0.5), corner(to, 0.5)];
  return prism(STAY, base, [0, 0, depth]);
};

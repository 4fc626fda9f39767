import type { Pickup, Point3 } from '../design/index.js';
import { dot3, length3, subtract3, type Vec3 } from '../numeric/index.js';
import { BEND_RADIUS } from '../pan/index.js';
import type { Entrance, Tube, TubeBend } from './tube-loss.js';

/** A mouth this much wider than the bore leads the oil in as a bell does (common practice, no source). */
const BELL = 1.3;

const entranceOf = ({ mouth, bore }: Pickup): Entrance => (mouth >= BELL * bore ? 'bell' : 'projecting');

/**
 * The tube from the mouth's centre along the route to the port, or null where no route is given. Each corner
 * of the route is a bend; its radius is the usual one, and arcs are not taken off the straight length.
 */
export const tubeRun = (pickup: Pickup, mouth: Vec3, port: Point3 | null): Tube | null => {
  if (pickup.route.length < 2) return null;
  const points = apart([mouth, ...pickup.route, ...(port === null ? [] : [port])]);
  const legs = points.slice(1).map((p, i) => subtract3(p, points[i] as Vec3));
  const radiusOverBore = (BEND_RADIUS * (pickup.bore + 2 * pickup.wall)) / pickup.bore;
  const bends = legs
    .slice(1)
    .map((leg, i): TubeBend => ({ angle: angleBetween(legs[i] as Vec3, leg), radiusOverBore }));
  return {
    bore: pickup.bore,
    length: legs.reduce((sum, leg) => sum + length3(leg), 0),
    entrance: entranceOf(pickup),
    bends,
  };
};

/** Points without the ones that repeat the last. */
const apart = (points: readonly Vec3[]): readonly Vec3[] =>
  points.filter((p, i) => i === 0 || length3(subtract3(p, points[i - 1] as Vec3)) > 1e-6);

const angleBetween = (a: Vec3, b: Vec3): number =>
  Math.acos(Math.min(1, Math.max(-1, dot3(a, b) / (length3(a) * length3(b)))));

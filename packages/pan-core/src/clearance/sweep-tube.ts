import type { Pickup } from '../design/index.js';
import { edgeToSweep, type Nearest, nearestOf, type Sweep } from './sweep.js';

/** The pickup tube's outside against one sweep; null: its way is not given. */
export const tubeToSweep = ({ route, bore, wall }: Pickup, sweep: Sweep): Nearest | null => {
  if (route.length < 2) return null;
  const near = nearestOf(route.slice(1).map((b, i) => edgeToSweep(sweep, route[i]!, b)));
  return { ...near, distance: near.distance - bore / 2 - wall };
};

import { type OilSystem, restAnswer } from '../oil/index.js';

/**
 * Least distance from the rods' sweep down to the oil's surface at rest in the installed tilt, along gravity,
 * mm; null when crank or throws are not known. The sweep is a disc of radius stroke/2 + big-end reach about
 * the crank axis, over the big end's width at each throw.
 */
export const sweepOverOil = (system: OilSystem, volume: number): number | null => {
  const { crank } = system.model.design.engine;
  if (crank === null || crank.throws === null) return null;
  const answer = restAnswer(system, volume);
  const { up, pools } = answer;
  const radius = crank.stroke / 2 + crank.bigEndReach;
  const reach = radius * Math.hypot(up[1], up[2]);
  let least = Number.POSITIVE_INFINITY;
  for (const pool of pools) {
    if (!pool.hasPickup) continue;
    for (const x of crank.throws)
      for (const edge of [x - crank.throwWidth / 2, x + crank.throwWidth / 2]) {
        least = Math.min(least, up[0] * edge + up[2] * crank.centreAboveRail - reach - pool.level);
      }
  }
  return least;
};

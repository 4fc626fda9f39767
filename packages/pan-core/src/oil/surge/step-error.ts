import type { DormandPrince } from '../../numeric/index.js';
import { POOL_SIZE, type SurgePool, type SurgeScene } from './surge-scene.js';

/** Volumes may be off by this share of the tolerance times all the oil. */
const VOLUME_SCALE = 1;
/** Slopes and doors may be off by this many times the tolerance. */
const SLOPE_SCALE = 10;
const DOOR_SCALE = 300;

/** The largest error of a tried step in units of what is allowed; NaN when the step went wrong altogether. */
export const stepError = (scene: SurgeScene, { error }: DormandPrince): number => {
  const { tolerance, volume } = scene.settings;
  const allowed = tolerance * Math.max(volume, 1e6) * VOLUME_SCALE;
  let most = 0;
  for (let d = scene.firstDoor; d < scene.firstLitre; d++)
    most = Math.max(most, Math.abs(error[d] as number) / (DOOR_SCALE * tolerance));
  for (let p = 0; p < scene.pools.length; p++) {
    const pool = scene.pools[p] as SurgePool;
    const base = scene.firstPool + POOL_SIZE * p;
    most = Math.max(most, Math.abs(error[base] as number) / allowed);
    if (!Number.isFinite(error[base] as number)) return Number.NaN;
    if (!scene.settings.swings) continue;
    const slope = SLOPE_SCALE * tolerance;
    most = Math.max(
      most,
      Math.abs(error[base + 1] as number) / slope,
      Math.abs(error[base + 2] as number) / slope,
      Math.abs(error[base + 3] as number) / (slope * (pool.swing[0] as number)),
      Math.abs(error[base + 4] as number) / (slope * (pool.swing[1] as number)),
    );
  }
  return most;
};

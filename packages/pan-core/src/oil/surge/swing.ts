import { type FreeSurface, freeSurface } from '../free-surface.js';
import { sloshFrequency } from '../slosh.js';
import { POOL_SIZE, type SurgePool, type SurgeScene } from './surge-scene.js';

/** A pool of less swings less, down to none, mm³: a puddle follows gravity. */
const ENOUGH = 5e4;
/** A surface whose first mode is faster than this swings as fast as this, s. */
const FASTEST_PERIOD = 0.15;
const FASTEST = (2 * Math.PI) / FASTEST_PERIOD;
/** A wave this many times as high as its pool is deep has broken: it comes to rest without swinging (our choice). */
const BROKEN = 3;
/** Change of a swing's speed or damping that counts, as a share of it. */
const CHANGED = 0.02;

export interface SwingCheck {
  /** Sets each pool's swing from its surface as it stands; says whether one changed by more than a little. */
  readonly renew: (y: Float64Array) => boolean;
  /** Periods of a pool's first modes along pan x and y at the levels last set, s; null without a surface. */
  readonly periods: (pool: SurgePool) => readonly [number | null, number | null];
}

export const createSwingCheck = (scene: SurgeScene): SwingCheck => {
  const surface: FreeSurface = { x: 0, y: 0, depth: 0 };
  const look = (pool: SurgePool): boolean => {
    if (pool.dry || pool.full) return false;
    freeSurface(scene.oriented, pool.cells, pool.level, scene.measure, surface);
    return surface.depth > 0;
  };
  const speedOf = (length: number): number =>
    length > 0
      ? Math.min(FASTEST, 2 * Math.PI * sloshFrequency(length, surface.depth, scene.gravity))
      : FASTEST;
  /** How far a wave breaks, 0–1: not while it is less high than its pool is deep, wholly at three times that. */
  const breaking = (fall: number): number =>
    Math.min(1, Math.max(0, (fall / (2 * surface.depth) - 1) / (BROKEN - 1)));
  return {
    renew: (y) => {
      if (!scene.settings.swings) return false;
      let changed = false;
      for (let p = 0; p < scene.pools.length; p++) {
        const pool = scene.pools[p] as SurgePool;
        const base = scene.firstPool + POOL_SIZE * p;
        const s = look(pool) ? Math.min(1, (y[base] as number) / ENOUGH) : 0;
        const share = s * s * (3 - 2 * s);
        for (let axis = 0; axis < 2; axis++) {
          const length = axis === 0 ? surface.x : surface.y;
          const off = (y[base + 1 + axis] as number) - (axis === 0 ? scene.stillX : scene.stillY);
          const whole = share > 0 ? share * (1 - breaking(Math.abs(off) * length)) : 0;
          const speed = FASTEST + (share > 0 ? share * (speedOf(length) - FASTEST) : 0);
          const damping = 1 + whole * (scene.settings.damping - 1);
          if (!differs(pool.swing[axis] as number, speed) && !differs(pool.damping[axis] as number, damping))
            continue;
          pool.swing[axis] = speed;
          pool.damping[axis] = damping;
          changed = true;
        }
      }
      return changed;
    },
    periods: (pool) => {
      if (!look(pool)) return [null, null];
      const period = (length: number): number | null =>
        length > 0 ? 1 / sloshFrequency(length, surface.depth, scene.gravity) : null;
      return [period(surface.x), period(surface.y)];
    },
  };
};

const differs = (old: number, now: number): boolean => Math.abs(now - old) > CHANGED * now;

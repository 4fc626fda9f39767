import type { Design } from '../design/index.js';
import { dot3, type Vec3 } from '../numeric/index.js';
import type { OilSystem } from './answer.js';
import { attitudeOf } from './attitude.js';
import { createOriented, heightOf, type Oriented, orient } from './body.js';
import { createScene, DRY, levelOf, NO_OIL, type Pool } from './pools.js';
import { type Basin, basinOf, type Rest, restAt, restLevels, restOil } from './rest.js';
import { pointOnStick, type StickPath } from './stick-path.js';

/** How the ground lies under the standing car, radians: uphill ahead, and higher on the left. */
export interface Ground {
  readonly uphill: number;
  readonly leftUp: number;
}

/** Ground without a slope. */
export const LEVEL_GROUND: Ground = Object.freeze({ uphill: 0, leftUp: 0 });

/** Where oil at rest stands on the stick. */
export interface StickReading {
  /** Distance from where the tube enters, mm. */
  readonly along: number;
  /** It stands in the pool at the mouth, so that it follows the fill. */
  readonly atMouth: boolean;
}

/**
 * The unit vector against gravity in pan axes on sloping ground. A slope across is a sideways pull without body
 * roll, so that the engine's own tilt comes after it.
 */
export const upOnGround = (design: Design, { uphill, leftUp }: Ground): Vec3 => {
  const stiff: Design = {
    ...design,
    chassis: { ...design.chassis, body: { rollPerG: 0, divePerG: 0 } },
  };
  // Higher on the left: oil runs right, as in a left turn.
  const pull = Math.tan(leftUp) * Math.cos(uphill);
  return attitudeOf(stiff, { forward: 0, left: pull, grade: uphill }).up;
};

/** The highest oil on the stick at rest with so much in the pan, mm³; null when the stick stays dry. */
export const readStick = (
  system: OilSystem,
  path: StickPath,
  volume: number,
  ground: Ground = LEVEL_GROUND,
): StickReading | null => {
  const { model, body, ways } = system;
  const oriented = orient(createOriented(body), upOnGround(model.design, ground));
  const basin = basinOf(oriented, ways.rest, model.mouth.cell);
  const scene = createScene(oriented, ways.rest);
  return readingOf(basin, path, restOil(basin, volume), (pool) => levelOf(scene, pool));
};

/** Readings of rising volumes at rest in the installed tilt on level ground. */
export const readStickAt = (
  { basin }: Pick<OilSystem, 'basin'>,
  path: StickPath,
  volumes: readonly number[],
): readonly (StickReading | null)[] => {
  const levels = restLevels(basin, volumes);
  return volumes.map((volume, i) => {
    const level = levels[i] as number;
    const at = ({ cells }: Pool): number => Math.max(level, basin.drain[cells[0] as number] as number);
    return readingOf(basin, path, restAt(basin, volume, level), at);
  });
};

const readingOf = (
  { oriented, mouthCell }: Basin,
  path: StickPath,
  { state }: Rest,
  levelAt: (pool: Pool) => number,
): StickReading | null => {
  const falls = -dot3(oriented.up, path.along);
  for (const { cell, enters, leaves } of path.run) {
    const number = state.of[cell] as number;
    const pool = number === DRY ? null : (state.pools[number] as Pool);
    if (pool === null || pool.volume <= NO_OIL) continue;
    const from = Math.max(enters, 0);
    const over = heightAt(oriented, path, from) - levelAt(pool);
    const along = over <= 0 ? from : falls > 0 ? from + over / falls : Number.POSITIVE_INFINITY;
    if (along < leaves) return { along, atMouth: number === state.of[mouthCell] };
  }
  return null;
};

const heightAt = (o: Oriented, path: StickPath, t: number): number => heightOf(o, pointOnStick(path, t));

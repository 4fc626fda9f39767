import type { OilSystem } from './answer.js';
import { heightOf } from './body.js';
import { DRY, levelOf, NO_OIL, type Pool, type PoolState, type Scene } from './pools.js';

/** Height of the rim's highest point along effective gravity, mm above the body's origin. */
export const rimHeight = ({ model }: OilSystem, { oriented }: Scene): number => {
  const { centre, radius } = model.mouth;
  return heightOf(oriented, centre) + radius * Math.hypot(oriented.up[0], oriented.up[1]);
};

/** Least depth of the mouth's rim below its own pool's surface, mm; a dry cell's level is its lowest point. */
export const submergenceOf = (system: OilSystem, scene: Scene, state: PoolState): number => {
  const mine = state.of[system.model.mouth.cell] as number;
  const pool = mine === DRY ? null : (state.pools[mine] as Pool);
  const level =
    pool !== null && pool.volume > NO_OIL
      ? levelOf(scene, pool)
      : (scene.oriented.low[system.model.mouth.cell] as number);
  return level - rimHeight(system, scene);
};

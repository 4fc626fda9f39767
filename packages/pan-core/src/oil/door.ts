import { drainHeights } from './drain.js';
import { measureCells, solveLevel } from './level.js';
import { dividePool, lowerPool } from './lower.js';
import {
  DRY,
  levelOf,
  NO_OIL,
  type Pool,
  type PoolState,
  poolOf,
  SAME_LEVEL,
  type Scene,
  wayAt,
} from './pools.js';

/** A door passes oil while its upstream side stands above its sill and above its downstream side. */
export const runsThroughDoor = (scene: Scene, state: PoolState, w: number): boolean => {
  const way = wayAt(scene, w);
  const h = levelOf(scene, state.pools[state.of[way.from] as number] as Pool);
  if (h <= (scene.sills[w] as number)) return false;
  const below = state.of[way.to] as number;
  if (below === DRY) return h > (scene.oriented.low[way.to] as number) + SAME_LEVEL;
  const down = state.pools[below] as Pool;
  return !isFull(scene, down) && h > levelOf(scene, down) + SAME_LEVEL;
};

/** A full room has no level of its own and takes no more. */
const isFull = (scene: Scene, pool: Pool): boolean =>
  pool.cells.reduce((room, c) => room + (scene.oriented.body.capacity[c] as number), -pool.volume) <= NO_OIL;

/**
 * Lets oil through a door until upstream stands no higher than downstream, or than the door's sill. Returns
 * the pools to look at again.
 */
export const balanceDoor = (scene: Scene, state: PoolState, w: number): readonly number[] => {
  const way = wayAt(scene, w);
  const i = state.of[way.from] as number;
  const j = poolOf(state, way.to);
  const up = state.pools[i] as Pool;
  const down = state.pools[j] as Pool;
  const both = up.volume + down.volume;
  const h = commonLevel(scene, state, i, way.from, down, both);
  const { kept, parts } = lowerPool(scene, state, i, way.from, Math.max(h, scene.sills[w] as number));
  const stays = Math.min(up.volume, kept);
  down.volume = both - stays;
  return [j, ...dividePool(state, i, parts, stays)];
};

/** One level for both sides; cells behind a higher sill inside the upstream pool stop draining there. */
const commonLevel = (
  scene: Scene,
  state: PoolState,
  i: number,
  exit: number,
  down: Pool,
  both: number,
): number => {
  const { oriented, ways, sills, measure } = scene;
  const drain = drainHeights(ways, sills, exit, state.of.length, (c) => state.of[c] === i);
  let cells = (state.pools[i] as Pool).cells;
  let behind = 0;
  for (;;) {
    const h = solveLevel(oriented, [...cells, ...down.cells], both - behind, measure);
    const cut = cells.filter((c) => (drain[c] as number) > h);
    if (cut.length === 0) return h;
    for (const c of cut) behind += measureCells(oriented, [c], drain[c] as number, measure).volume;
    cells = cells.filter((c) => (drain[c] as number) <= h);
  }
};

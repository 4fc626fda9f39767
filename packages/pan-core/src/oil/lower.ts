import { drainHeights } from './drain.js';
import { measureCells } from './level.js';
import { createPool, DRY, type Pool, type PoolState, type Scene, volumeAt, wayAt } from './pools.js';

export interface Lowered {
  /** Oil that stays, mm³. */
  readonly kept: number;
  /** The pools it stays in. */
  readonly parts: readonly Pool[];
}

/**
 * What stays in a pool that drains to height `to` by way of one of its cells: behind a sill inside the pool
 * that is higher, oil stands at that sill, in a pool of its own.
 */
export const lowerPool = (scene: Scene, state: PoolState, i: number, exit: number, to: number): Lowered => {
  const { oriented, ways, sills } = scene;
  const pool = state.pools[i] as Pool;
  if (pool.cells.length === 1) return { kept: volumeAt(scene, pool, to), parts: [pool] };
  const drain = drainHeights(ways, sills, exit, state.of.length, (c) => state.of[c] === i);
  const level = (c: number): number => Math.max(drain[c] as number, to);
  const seen = new Set<number>();
  const parts: Pool[] = [];
  let kept = 0;
  for (const start of pool.cells) {
    const h = level(start);
    if (seen.has(start) || h <= (oriented.low[start] as number)) continue;
    seen.add(start);
    const cells = [start];
    for (let k = 0; k < cells.length; k++) {
      const c = cells[k] as number;
      for (const w of ways.at[c] as readonly number[]) {
        const way = wayAt(scene, w);
        const other = way.from === c ? way.to : way.from;
        if (!way.both || state.of[other] !== i || seen.has(other)) continue;
        if ((sills[w] as number) < h && level(other) === h && (oriented.low[other] as number) < h) {
          seen.add(other);
          cells.push(other);
        }
      }
    }
    const volume = measureCells(oriented, cells, h, scene.measure).volume;
    kept += volume;
    parts.push(createPool(cells, volume));
  }
  return { kept, parts };
};

/** Puts the parts, `kept` together, in the place of pool i; returns their numbers. Rounding goes to the largest. */
export const dividePool = (
  state: PoolState,
  i: number,
  parts: readonly Pool[],
  kept: number,
): readonly number[] => {
  const pool = state.pools[i] as Pool;
  if (parts.length === 1 && (parts[0] as Pool).cells.length === pool.cells.length) {
    pool.volume = kept;
    return [i];
  }
  for (const c of pool.cells) state.of[c] = DRY;
  state.pools[i] = null;
  if (parts.length === 0) return [];
  const rest = kept - parts.reduce((sum, p) => sum + p.volume, 0);
  const largest = parts.reduce((a, b) => (b.volume > a.volume ? b : a));
  largest.volume += rest;
  return parts.map((p, k) => {
    const number = k === 0 ? i : state.pools.length;
    state.pools[number] = p;
    for (const c of p.cells) state.of[c] = number;
    return number;
  });
};

import type { Oriented } from './body.js';
import { drainHeights } from './drain.js';
import { createMeasure, measureCells, solveLevel } from './level.js';
import { DRY, type Pool, type PoolState, poolOf } from './pools.js';
import { sillsOf, type Ways } from './ways.js';

export interface Rest {
  readonly state: PoolState;
  /** Level of the mouth's pool, mm above the body's origin. */
  readonly level: number;
  /** Oil in hollows that do not drain to the mouth, filled to their lips, mm³: apart from any fill. */
  readonly neverReturns: number;
}

/**
 * Oil at rest: hollows that cannot drain to the mouth's cell are full to their lips; the rest is one pool
 * at the mouth. Every door and weep is open both ways.
 */
export const restOil = (o: Oriented, ways: Ways, mouthCell: number, volume: number): Rest => {
  const n = o.body.cellCount;
  const sills = sillsOf(ways, o, new Float64Array(ways.list.length));
  const drain = drainHeights(ways, sills, mouthCell, n);
  const out = createMeasure();
  const held = Float64Array.from(drain, (d, c) => measureCells(o, [c], d, out).volume);
  const neverReturns = held.reduce((a, b) => a + b, 0);
  const order = [...drain.keys()].sort((a, b) => (drain[a] as number) - (drain[b] as number));
  let hollow = neverReturns;
  let level = o.low[mouthCell] as number;
  const mine: number[] = [];
  for (let k = 0; k < n && hollow < volume; k++) {
    mine.push(order[k] as number);
    hollow -= held[order[k] as number] as number;
    level = solveLevel(o, mine, volume - hollow, out);
    const next = order[k + 1];
    if (next === undefined || level <= (drain[next] as number)) break;
  }
  const short = neverReturns > volume ? volume / neverReturns : 1;
  const levels = Float64Array.from(drain, (d) => Math.max(d, level));
  const state = group(o, ways, sills, levels);
  let left = volume;
  for (const pool of state.pools) {
    if (pool === null) continue;
    const h = levels[pool.cells[0] as number] as number;
    pool.volume = Math.min(left, short * measureCells(o, pool.cells, h, out).volume);
    left -= pool.volume;
  }
  if (short === 1 && volume > 0) (state.pools[poolOf(state, mouthCell)] as Pool).volume += left;
  return { state, level, neverReturns };
};

/** Pools of cells that both stand above a sill between them. */
const group = (o: Oriented, ways: Ways, sills: Float64Array, levels: Float64Array): PoolState => {
  const of = new Int32Array(levels.length).fill(DRY);
  const pools: Pool[] = [];
  for (let start = 0; start < levels.length; start++) {
    if (of[start] !== DRY || (levels[start] as number) <= (o.low[start] as number)) continue;
    of[start] = pools.length;
    const cells = [start];
    for (let k = 0; k < cells.length; k++) {
      const c = cells[k] as number;
      for (const w of ways.at[c] as readonly number[]) {
        const way = ways.list[w] as Ways['list'][number];
        const other = way.from === c ? way.to : way.from;
        if (of[other] !== DRY || (levels[other] as number) <= (o.low[other] as number)) continue;
        const sill = sills[w] as number;
        if (sill < (levels[c] as number) && sill < (levels[other] as number)) {
          of[other] = pools.length;
          cells.push(other);
        }
      }
    }
    pools.push({ cells, volume: 0 });
  }
  return { pools, of };
};

import type { Oriented } from './body.js';
import { drainHeights } from './drain.js';
import { createMeasure, measureCells, solveLevel } from './level.js';
import { sweepLevels } from './level-sweep.js';
import { createPool, DRY, type Pool, type PoolState, poolOf } from './pools.js';
import { sillsOf, type Ways } from './ways.js';

export interface Rest {
  readonly state: PoolState;
  /** Level of the mouth's pool, mm above the body's origin. */
  readonly level: number;
  /** Oil in hollows that do not drain to the mouth, filled to their lips, mm³: apart from any fill. */
  readonly neverReturns: number;
  /** The same, cell by cell. */
  readonly hollows: Float64Array;
}

/** A pan at rest in one direction of gravity, before any oil is poured. */
export interface Basin {
  readonly oriented: Oriented;
  readonly ways: Ways;
  readonly mouthCell: number;
  readonly sills: Float64Array;
  /** Height at which each cell drains to the mouth's, mm above the body's origin. */
  readonly drain: Float64Array;
  /** Oil each cell keeps below that, mm³, and all of it together. */
  readonly kept: Float64Array;
  readonly neverReturns: number;
  /** Cells by that height, the mouth's first. */
  readonly order: readonly number[];
}

/** Every door and weep is open both ways. */
export const basinOf = (o: Oriented, ways: Ways, mouthCell: number): Basin => {
  const sills = sillsOf(ways, o, new Float64Array(ways.list.length));
  const drain = drainHeights(ways, sills, mouthCell, o.body.cellCount);
  const out = createMeasure();
  const kept = Float64Array.from(drain, (d, c) => measureCells(o, [c], d, out).volume);
  const neverReturns = kept.reduce((a, b) => a + b, 0);
  const order = [...drain.keys()].sort((a, b) => (drain[a] as number) - (drain[b] as number));
  return { oriented: o, ways, mouthCell, sills, drain, kept, neverReturns, order };
};

/** Level of the mouth's pool: hollows that cannot drain to it are full to their lips first. */
const restLevel = (
  { oriented, mouthCell, drain, kept, neverReturns, order }: Basin,
  volume: number,
): number => {
  const out = createMeasure();
  let hollow = neverReturns;
  let level = oriented.low[mouthCell] as number;
  const mine: number[] = [];
  for (let k = 0; k < order.length && hollow < volume; k++) {
    const cell = order[k] as number;
    mine.push(cell);
    hollow -= kept[cell] as number;
    level = solveLevel(oriented, mine, volume - hollow, out);
    const next = order[k + 1];
    if (next === undefined || level <= (drain[next] as number)) break;
  }
  return level;
};

/** The same for many rising volumes: those that lie in the same cells are swept together. */
export const restLevels = (basin: Basin, volumes: readonly number[]): Float64Array => {
  const { oriented, mouthCell, drain, kept, neverReturns, order } = basin;
  const levels = new Float64Array(volumes.length).fill(oriented.low[mouthCell] as number);
  const out = createMeasure();
  let hollow = neverReturns;
  let done = volumes.findIndex((volume) => volume > neverReturns);
  for (let k = 0; k < order.length && done >= 0 && done < volumes.length; k++) {
    const mine = order.slice(0, k + 1);
    hollow -= kept[order[k] as number] as number;
    const next = order[k + 1];
    const most =
      next === undefined
        ? Number.POSITIVE_INFINITY
        : measureCells(oriented, mine, drain[next] as number, out).volume;
    let end = done;
    while (end < volumes.length && (volumes[end] as number) - hollow <= most) end++;
    if (end === done) continue;
    const own = volumes.slice(done, end).map((volume) => volume - hollow);
    sweepLevels(oriented, mine, own, levels.subarray(done, end));
    done = end;
  }
  return levels;
};

/** The pools of a volume whose level is known. */
export const restAt = (basin: Basin, volume: number, level: number): Rest => {
  const { oriented, ways, mouthCell, sills, drain, neverReturns } = basin;
  const out = createMeasure();
  const short = neverReturns > volume ? volume / neverReturns : 1;
  const levels = Float64Array.from(drain, (d) => Math.max(d, level));
  const state = group(oriented, ways, sills, levels);
  let left = volume;
  for (const pool of state.pools) {
    if (pool === null) continue;
    const h = levels[pool.cells[0] as number] as number;
    pool.volume = Math.min(left, short * measureCells(oriented, pool.cells, h, out).volume);
    left -= pool.volume;
  }
  if (short === 1 && volume > 0) (state.pools[poolOf(state, mouthCell)] as Pool).volume += left;
  return { state, level, neverReturns, hollows: basin.kept };
};

/**
 * Oil at rest: hollows that cannot drain to the mouth's cell are full to their lips; the rest is one pool at
 * the mouth.
 */
export const restOil = (basin: Basin, volume: number): Rest =>
  restAt(basin, volume, restLevel(basin, volume));

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
    pools.push(createPool(cells, 0));
  }
  return { pools, of };
};

import { PanError } from '../errors/index.js';
import type { Oriented } from './body.js';
import { drainHeights } from './drain.js';
import { createMeasure, type Measure, measureCells, solveLevel } from './level.js';
import type { Way, Ways } from './ways.js';

/** Oil lying together: cells with one level. Dry cells are pools of no volume. Volumes in mm³. */
export interface Pool {
  cells: number[];
  volume: number;
}

/** Every cell's pool. Pools that have been merged away are null. */
export interface PoolState {
  readonly pools: (Pool | null)[];
  readonly of: Int32Array;
}

/** One direction of gravity to settle oil in. */
export interface Scene {
  readonly oriented: Oriented;
  readonly ways: Ways;
  readonly sills: Float64Array;
  readonly measure: Measure;
}

/** Sills closer than this share the oil that spills over them, mm. */
const SAME_SILL = 1e-6;
/** Less oil than this is rounding, mm³ (a millionth of a drop). */
export const NO_OIL = 1e-7;
const MOST_ROUNDS = 200_000;

export const createScene = (oriented: Oriented, ways: Ways): Scene => ({
  oriented,
  ways,
  sills: new Float64Array(ways.list.length),
  measure: createMeasure(),
});

const volumeAt = (scene: Scene, pool: Pool, h: number): number =>
  measureCells(scene.oriented, pool.cells, h, scene.measure).volume;

export const levelOf = (scene: Scene, pool: Pool): number =>
  solveLevel(scene.oriented, pool.cells, pool.volume, scene.measure);

/**
 * The state after gravity has turned to the scene's direction: each pool finds its level among its own
 * cells and parts where a sill inside it has come out of the oil, then spills, merges and feeds doors until
 * nothing moves. Oil is conserved: what leaves one pool enters another.
 */
export const settle = (scene: Scene, before: PoolState): PoolState => {
  const state = part(scene, before);
  const waiting: number[] = [];
  state.pools.forEach((p, i) => {
    if (p !== null && p.volume > 0) waiting.push(i);
  });
  for (let round = 0; waiting.length > 0 && round < MOST_ROUNDS; round++) {
    const i = waiting.pop() as number;
    const pool = state.pools[i];
    if (pool === null || pool === undefined || pool.volume <= 0) continue;
    for (const j of overflow(scene, state, i)) waiting.push(j);
  }
  if (waiting.length > 0) {
    throw new PanError({
      code: 'internal',
      path: [],
      message: 'Oil kept moving between pools and found no resting place.',
    });
  }
  return state;
};

/** Re-levels each pool among its own cells and parts it where oil no longer stands above the sills. */
const part = (scene: Scene, before: PoolState): PoolState => {
  const { oriented, ways, sills } = scene;
  const of = new Int32Array(before.of.length).fill(-1);
  const pools: Pool[] = [];
  const single = (cell: number, volume: number): void => {
    of[cell] = pools.length;
    pools.push({ cells: [cell], volume });
  };
  before.pools.forEach((pool, id) => {
    if (pool === null) return;
    if (pool.cells.length === 1 || pool.volume <= 0) {
      pool.cells.forEach((c, k) => {
        single(c, k === 0 ? pool.volume : 0);
      });
      return;
    }
    const h = levelOf(scene, pool);
    const bodies: Pool[] = [];
    for (const start of pool.cells) {
      if ((of[start] as number) >= 0) continue;
      if ((oriented.low[start] as number) >= h) {
        single(start, 0);
        continue;
      }
      const body: Pool = { cells: [start], volume: 0 };
      const number = pools.length;
      pools.push(body);
      bodies.push(body);
      of[start] = number;
      for (let k = 0; k < body.cells.length; k++) {
        const c = body.cells[k] as number;
        for (const w of ways.at[c] as readonly number[]) {
          const way = ways.list[w] as Way;
          const other = way.from === c ? way.to : way.from;
          if (!way.both || (of[other] as number) >= 0 || before.of[other] !== id) continue;
          if ((sills[w] as number) < h && (oriented.low[other] as number) < h) {
            of[other] = number;
            body.cells.push(other);
          }
        }
      }
    }
    share(scene, bodies, pool.volume, h);
  });
  return { pools, of };
};

/** Parts a volume among bodies that stood at one level; a single body keeps it to the last digit. */
const share = (scene: Scene, bodies: readonly Pool[], volume: number, h: number): void => {
  if (bodies.length === 1) {
    (bodies[0] as Pool).volume = volume;
    return;
  }
  const parts = bodies.map((b) => volumeAt(scene, b, h));
  const sum = parts.reduce((a, b) => a + b, 0);
  let left = volume;
  bodies.forEach((b, i) => {
    b.volume = i === bodies.length - 1 ? left : Math.min(left, (volume * (parts[i] as number)) / sum);
    left -= b.volume;
  });
};

/** One pool's turn: over its lowest outer sill if it stands above it. Returns the pools to look at again. */
const overflow = (scene: Scene, state: PoolState, i: number): readonly number[] => {
  const { ways, sills } = scene;
  const pool = state.pools[i] as Pool;
  const exits: number[] = [];
  let lowest = Number.POSITIVE_INFINITY;
  for (const c of pool.cells)
    for (const w of ways.at[c] as readonly number[]) {
      const way = ways.list[w] as Way;
      if (state.of[way.from] === state.of[way.to] || (!way.both && state.of[way.from] !== i)) continue;
      const sill = sills[w] as number;
      if (!way.both && !runsThroughDoor(scene, state, i, w)) continue;
      if (sill < lowest) lowest = sill;
      exits.push(w);
    }
  if (exits.length === 0) return [];
  if (pool.volume - volumeAt(scene, pool, lowest) <= NO_OIL) return [];
  const out = exits.filter((w) => (sills[w] as number) <= lowest + SAME_SILL);
  const beyond = (w: number): number => {
    const way = ways.list[w] as Way;
    return (state.of[way.from] === i ? state.of[way.to] : state.of[way.from]) as number;
  };
  for (const w of out) {
    const j = beyond(w);
    const other = state.pools[j] as Pool;
    const sill = sills[w] as number;
    if (!(ways.list[w] as Way).both) {
      return balance(scene, state, i, w, sill);
    }
    if (other.volume >= volumeAt(scene, other, sill) - NO_OIL) {
      merge(state, i, j);
      return [i];
    }
  }
  const inner = innerCell(state, i, ways.list[out[0] as number] as Way);
  const { kept, parts } = lower(scene, state, i, inner, lowest);
  const portion = (pool.volume - kept) / out.length;
  if (portion * out.length <= NO_OIL) return parts.length > 1 ? divide(state, i, parts) : [];
  const touched = out.map(beyond);
  for (const j of touched) (state.pools[j] as Pool).volume += portion;
  pool.volume = kept;
  return [...touched, ...divide(state, i, parts)];
};

const innerCell = (state: PoolState, i: number, way: Way): number =>
  state.of[way.from] === i ? way.from : way.to;

interface Lowered {
  /** Oil that stays, mm³. */
  readonly kept: number;
  /** The pools it stays in. */
  readonly parts: readonly Pool[];
}

/**
 * What stays in a pool that drains to height `to` by way of one of its cells: behind a sill inside the pool
 * that is higher, oil stands at that sill, in a pool of its own.
 */
const lower = (scene: Scene, state: PoolState, i: number, exit: number, to: number): Lowered => {
  const { oriented, ways, sills } = scene;
  const pool = state.pools[i] as Pool;
  const drain = drainHeights(ways, sills, exit, state.of.length, (c) => state.of[c] === i);
  const level = (c: number): number => Math.max(drain[c] as number, to);
  const seen = new Set<number>();
  const parts: Pool[] = [];
  let kept = 0;
  for (const start of pool.cells) {
    if (seen.has(start)) continue;
    seen.add(start);
    const cells = [start];
    const h = level(start);
    for (let k = 0; k < cells.length && h > (oriented.low[start] as number); k++) {
      const c = cells[k] as number;
      for (const w of ways.at[c] as readonly number[]) {
        const way = ways.list[w] as Way;
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
    parts.push({ cells, volume });
  }
  return { kept, parts };
};

/** Puts the parts in the place of pool i; returns their numbers. The last digits go to the largest. */
const divide = (state: PoolState, i: number, parts: readonly Pool[]): readonly number[] => {
  const pool = state.pools[i] as Pool;
  if (parts.length === 1) return [i];
  const rest = pool.volume - parts.reduce((sum, p) => sum + p.volume, 0);
  const largest = parts.reduce((a, b) => (b.volume > a.volume ? b : a));
  largest.volume += rest;
  return parts.map((p, k) => {
    const number = k === 0 ? i : state.pools.length;
    state.pools[number] = p;
    for (const c of p.cells) state.of[c] = number;
    return number;
  });
};

/** A door passes oil while its upstream side stands higher than its downstream side. */
const runsThroughDoor = (scene: Scene, state: PoolState, i: number, w: number): boolean => {
  const way = scene.ways.list[w] as Way;
  const up = state.pools[i] as Pool;
  const down = state.pools[state.of[way.to] as number] as Pool;
  const h = levelOf(scene, up);
  return h > (scene.sills[w] as number) && h > levelOf(scene, down) + SAME_LEVEL;
};

/** Two levels closer than this are equal for a door, mm. */
const SAME_LEVEL = 1e-9;

/** Lets oil through a door until upstream stands no higher than downstream, or than the door's sill. */
const balance = (scene: Scene, state: PoolState, i: number, w: number, sill: number): readonly number[] => {
  const way = scene.ways.list[w] as Way;
  const j = state.of[way.to] as number;
  const up = state.pools[i] as Pool;
  const down = state.pools[j] as Pool;
  const both = up.volume + down.volume;
  const drain = drainHeights(scene.ways, scene.sills, way.from, state.of.length, (c) => state.of[c] === i);
  // Cells behind a higher sill inside the upstream pool stop draining there: take them out until none is left.
  let cells = up.cells;
  let behind = 0;
  let h = solveLevel(scene.oriented, [...cells, ...down.cells], both, scene.measure);
  for (;;) {
    const cut = cells.filter((c) => (drain[c] as number) > h);
    if (cut.length === 0) break;
    for (const c of cut)
      behind += measureCells(scene.oriented, [c], drain[c] as number, scene.measure).volume;
    cells = cells.filter((c) => (drain[c] as number) <= h);
    h = solveLevel(scene.oriented, [...cells, ...down.cells], both - behind, scene.measure);
  }
  const { kept, parts } = lower(scene, state, i, way.from, Math.max(h, sill));
  up.volume = Math.min(up.volume, kept);
  down.volume = both - up.volume;
  return [j, ...divide(state, i, parts)];
};

const merge = (state: PoolState, i: number, j: number): void => {
  const a = state.pools[i] as Pool;
  const b = state.pools[j] as Pool;
  for (const c of b.cells) state.of[c] = i;
  a.cells.push(...b.cells);
  a.volume += b.volume;
  state.pools[j] = null;
};

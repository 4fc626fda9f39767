import type { Oriented } from './body.js';
import { drainHeights } from './drain.js';
import { createMeasure, type Measure, measureCells, solveLevel } from './level.js';
import type { Way, Ways } from './ways.js';

/** Oil lying together: cells with one level. Volume in mm³, never zero but for a pool about to be filled. */
export interface Pool {
  cells: number[];
  volume: number;
  /** Its level in the direction the oil now settles in, and the volume and cells it was found for; NaN for none. */
  level: number;
  levelFor: number;
}

export const createPool = (cells: number[], volume: number): Pool => ({
  cells,
  volume,
  level: Number.NaN,
  levelFor: Number.NaN,
});

/** Where the oil is. `of` gives each cell's pool, −1 for a dry cell; pools that were merged away are null. */
export interface PoolState {
  readonly pools: (Pool | null)[];
  readonly of: Int32Array;
  /**
   * How far under the sill between them the parts of a pool stood when one plane through all of it parted
   * them, mm. A slow turn parts a pool at 0; the farther, the more oil is on the wrong side.
   */
  readonly torn?: number;
}

/** One direction of gravity to settle oil in. */
export interface Scene {
  readonly oriented: Oriented;
  readonly ways: Ways;
  readonly sills: Float64Array;
  readonly measure: Measure;
}

/** Less oil than this is rounding, mm³ (a millionth of a drop). */
export const NO_OIL = 1e-7;
export const DRY = -1;
/** Levels closer than this are equal, mm. */
export const SAME_LEVEL = 1e-9;

export const createScene = (oriented: Oriented, ways: Ways): Scene => ({
  oriented,
  ways,
  sills: new Float64Array(ways.list.length),
  measure: createMeasure(),
});

export const wayAt = (scene: Scene, w: number): Way => scene.ways.list[w] as Way;

export const volumeAt = (scene: Scene, pool: Pool, h: number): number =>
  measureCells(scene.oriented, pool.cells, h, scene.measure).volume;

export const levelOf = (scene: Scene, pool: Pool): number =>
  solveLevel(scene.oriented, pool.cells, pool.volume, scene.measure);

/** A level no lower than the pool's but for rounding, where one is known that costs no solve; else +∞. */
export const mostLevel = (pool: Pool): number =>
  pool.levelFor === pool.volume ? pool.level + SAME_LEVEL : Number.POSITIVE_INFINITY;

/** The pool of a cell; a dry cell gets an empty one of its own. */
export const poolOf = (state: PoolState, cell: number): number => {
  const known = state.of[cell] as number;
  if (known !== DRY) return known;
  state.pools.push(createPool([cell], 0));
  state.of[cell] = state.pools.length - 1;
  return state.pools.length - 1;
};

/** Re-levels each pool among its own cells and parts it where oil no longer stands above the sills inside it. */
export const partPools = (scene: Scene, before: PoolState): PoolState => {
  const state: PoolState = { pools: [], of: new Int32Array(before.of.length).fill(DRY) };
  let torn = 0;
  before.pools.forEach((pool, id) => {
    if (pool === null || pool.volume <= 0) return;
    const first = state.pools.length;
    if (pool.cells.length === 1) {
      state.of[pool.cells[0] as number] = first;
      state.pools.push(createPool([...pool.cells], pool.volume));
      return;
    }
    const h = levelOf(scene, pool);
    for (const start of pool.cells) {
      if (state.of[start] !== DRY || (scene.oriented.low[start] as number) >= h) continue;
      gather(scene, before, state, id, start, h);
    }
    if (state.pools.length === first) {
      // So little oil that its level is the lowest point itself: it lies in the lowest cell.
      const { low } = scene.oriented;
      const cell = pool.cells.reduce((a, b) => ((low[b] as number) < (low[a] as number) ? b : a));
      poolOf(state, cell);
    }
    const bodies = state.pools.slice(first) as Pool[];
    shareOut(scene, bodies, pool.volume, h);
    if (bodies.length === 1) {
      const [body] = bodies as [Pool];
      body.level = h;
      body.levelFor = pool.volume;
    }
    if (bodies.length > 1) torn = Math.max(torn, tear(scene, before, id, bodies, h));
  });
  return { ...state, torn };
};

/** A body of less oil than this tears nothing, mm³ (1 mL). */
const SLIVER = 1e3;

/** The most by which a body of oil stands under the way that last joined it to another, mm. */
const tear = (scene: Scene, before: PoolState, id: number, bodies: readonly Pool[], h: number): number => {
  const large = bodies.filter((body) => body.volume > SLIVER);
  if (large.length < 2) return 0;
  const gaps = large.map((body) => {
    const drain = drainHeights(
      scene.ways,
      scene.sills,
      body.cells[0] as number,
      before.of.length,
      (c) => before.of[c] === id,
    );
    const others = large.filter((other) => other !== body).flatMap((other) => other.cells);
    return Math.min(...others.map((c) => drain[c] as number)) - h;
  });
  return Math.max(0, ...gaps);
};

/** The body of oil around a cell at level h, within pool `id` of the state before. */
const gather = (
  scene: Scene,
  before: PoolState,
  state: PoolState,
  id: number,
  start: number,
  h: number,
): void => {
  const { oriented, ways, sills } = scene;
  const number = state.pools.length;
  const cells = [start];
  state.of[start] = number;
  for (let k = 0; k < cells.length; k++) {
    const c = cells[k] as number;
    for (const w of ways.at[c] as readonly number[]) {
      const way = wayAt(scene, w);
      const other = way.from === c ? way.to : way.from;
      if (!way.both || state.of[other] !== DRY || before.of[other] !== id) continue;
      if ((sills[w] as number) < h && (oriented.low[other] as number) < h) {
        state.of[other] = number;
        cells.push(other);
      }
    }
  }
  state.pools.push(createPool(cells, 0));
};

/** Parts a volume among bodies that stood at one level; a single body keeps it to the last digit. */
const shareOut = (scene: Scene, bodies: readonly Pool[], volume: number, h: number): void => {
  const parts = bodies.length === 1 ? [volume] : bodies.map((b) => volumeAt(scene, b, h));
  const sum = parts.reduce((a, b) => a + b, 0);
  let left = volume;
  bodies.forEach((b, i) => {
    b.volume = i === bodies.length - 1 ? left : Math.min(left, (volume * (parts[i] as number)) / sum);
    left -= b.volume;
  });
};

export const mergePools = (state: PoolState, i: number, j: number): void => {
  const a = state.pools[i] as Pool;
  const b = state.pools[j] as Pool;
  for (const c of b.cells) {
    state.of[c] = i;
    a.cells.push(c);
  }
  a.volume += b.volume;
  a.levelFor = Number.NaN;
  state.pools[j] = null;
};

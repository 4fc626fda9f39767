import { PanError } from '../errors/index.js';
import { balanceDoor, runsThroughDoor } from './door.js';
import { dividePool, lowerPool } from './lower.js';
import {
  DRY,
  mergePools,
  mostLevel,
  NO_OIL,
  type Pool,
  type PoolState,
  partPools,
  poolOf,
  type Scene,
  volumeAt,
  wayAt,
} from './pools.js';

/** Sills closer than this share the oil that spills over them, mm. */
const SAME_SILL = 1e-6;
const MOST_ROUNDS = 200_000;

/**
 * The state after gravity has turned to the scene's direction: each pool finds its level among its own
 * cells and parts where a sill inside it has come out of the oil, then spills, merges and feeds doors until
 * nothing moves. Oil is conserved: what leaves one pool enters another.
 */
export const settle = (scene: Scene, before: PoolState): PoolState => {
  const state = partPools(scene, before);
  const waiting = [...state.pools.keys()];
  for (let round = 0; waiting.length > 0; round++) {
    if (round === MOST_ROUNDS) {
      throw new PanError({
        code: 'internal',
        path: [],
        message: 'Oil kept moving between pools and found no resting place.',
      });
    }
    const i = waiting.pop() as number;
    const pool = state.pools[i];
    if (pool !== null && pool !== undefined && pool.volume > 0) waiting.push(...overflow(scene, state, i));
  }
  return state;
};

/** One pool's turn: over its lowest outer sill if it stands above it. Returns the pools to look at again. */
const overflow = (scene: Scene, state: PoolState, i: number): readonly number[] => {
  const pool = state.pools[i] as Pool;
  const { exits, lowest } = exitsOf(scene, state, i, mostLevel(pool));
  if (exits.length === 0 || pool.volume - volumeAt(scene, pool, lowest) <= NO_OIL) return [];
  for (const w of exits) {
    const way = wayAt(scene, w);
    if (!way.both) return withUpstream(scene, state, balanceDoor(scene, state, w));
    const j = poolOf(state, across(scene, state, i, w));
    const other = state.pools[j] as Pool;
    if (other.volume >= volumeAt(scene, other, scene.sills[w] as number) - NO_OIL) {
      mergePools(state, i, j);
      return withUpstream(scene, state, [i]);
    }
  }
  const first = wayAt(scene, exits[0] as number);
  const inner = state.of[first.from] === i ? first.from : first.to;
  const { kept, parts } = lowerPool(scene, state, i, inner, lowest);
  const excess = pool.volume - kept;
  if (excess <= NO_OIL) return parts.length > 1 ? dividePool(state, i, parts, pool.volume) : [];
  const touched = exits.map((w) => poolOf(state, across(scene, state, i, w)));
  for (const j of touched) (state.pools[j] as Pool).volume += excess / exits.length;
  return [...touched, ...withUpstream(scene, state, dividePool(state, i, parts, kept))];
};

/** The pools, and those whose doors lead into them: once these stand lower, a door that was at rest may run. */
const withUpstream = (scene: Scene, state: PoolState, pools: readonly number[]): readonly number[] => {
  if (!scene.ways.doors) return pools;
  const found = new Set(pools);
  for (const i of pools)
    for (const c of state.pools[i]?.cells ?? [])
      for (const w of scene.ways.at[c] as readonly number[]) {
        const way = wayAt(scene, w);
        const up = state.of[way.from] as number;
        if (!way.both && way.to === c && up !== DRY) found.add(up);
      }
  return [...found];
};

/** The cell on the far side of a way out of pool i. */
const across = (scene: Scene, state: PoolState, i: number, w: number): number => {
  const way = wayAt(scene, w);
  return state.of[way.from] === i ? way.to : way.from;
};

interface Exits {
  /** Ways out within rounding of the lowest. */
  readonly exits: readonly number[];
  readonly lowest: number;
}

/** `most`: a level the pool does not reach; a way out whose sill stands over it lets nothing out. */
const exitsOf = (scene: Scene, state: PoolState, i: number, most: number): Exits => {
  const { ways, sills } = scene;
  const all: number[] = [];
  let lowest = Number.POSITIVE_INFINITY;
  for (const c of (state.pools[i] as Pool).cells)
    for (const w of ways.at[c] as readonly number[]) {
      const sill = sills[w] as number;
      if (sill > most || sill > lowest + SAME_SILL) continue;
      const way = wayAt(scene, w);
      if (state.of[way.from] === state.of[way.to] || (!way.both && state.of[way.from] !== i)) continue;
      if (!way.both && !runsThroughDoor(scene, state, w)) continue;
      if (sill < lowest) lowest = sill;
      all.push(w);
    }
  return { exits: all.filter((w) => (sills[w] as number) <= lowest + SAME_SILL), lowest };
};

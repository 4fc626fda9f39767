import type { Basins, DoorWay, Saddle } from './basins.js';
import { heightFor, rowOf, type Stock, volumeBelow } from './stock.js';

/** Oil at one level in one or more hollows. */
export interface Pool {
  readonly hollows: readonly number[];
  readonly row: Float64Array;
  volume: number;
}

/** Sills this near each other, mm, share what spills equally. */
const EQUAL = 1e-6;
/** Volume, mm³, that counts as nothing. */
const NOTHING = 1e-3;

interface Scene {
  readonly basins: Basins;
  readonly stock: Stock;
  readonly owner: Pool[];
}

const poolOf = (scene: Scene, hollow: number): Pool => scene.owner[hollow] as Pool;

/** The lowest ways out of a pool. */
const waysOut = (scene: Scene, pool: Pool): readonly Saddle[] => {
  const out = scene.basins.saddles.filter(
    ({ a, b }) => (poolOf(scene, a) === pool) !== (poolOf(scene, b) === pool),
  );
  const lowest = Math.min(...out.map((one) => one.sill));
  return out.filter((one) => one.sill <= lowest + EQUAL);
};

const capacity = (scene: Scene, pool: Pool): number => {
  const out = waysOut(scene, pool);
  return out.length === 0 ? Infinity : volumeBelow(scene.stock, pool.row, (out[0] as Saddle).sill);
};

const join = (scene: Scene, p: Pool, q: Pool): void => {
  const hollows = [...p.hollows, ...q.hollows];
  const one: Pool = { hollows, row: rowOf(scene.stock, hollows), volume: p.volume + q.volume };
  for (const k of hollows) scene.owner[k] = one;
};

/** Spills or joins once; false when no pool stands above its lowest way out. */
const spillOnce = (scene: Scene): boolean => {
  for (const pool of new Set(scene.owner)) {
    const out = waysOut(scene, pool);
    if (out.length === 0) continue;
    const room = volumeBelow(scene.stock, pool.row, (out[0] as Saddle).sill);
    if (pool.volume <= room + NOTHING) continue;
    const others = out.map(({ a, b, sill }) => ({
      other: poolOf(scene, poolOf(scene, a) === pool ? b : a),
      sill,
    }));
    // Where both stand above the sill they are one pool.
    const full = others.find(
      ({ other, sill }) => other.volume >= volumeBelow(scene.stock, other.row, sill) - NOTHING,
    );
    if (full !== undefined) {
      join(scene, pool, full.other);
      return true;
    }
    const spilt = (pool.volume - room) / others.length;
    pool.volume = room;
    for (const { other } of others) other.volume += spilt;
    return true;
  }
  return false;
};

/**
 * Lets a door pass what it can: until upstream stands no higher than downstream or the sill, or until downstream
 * is about to spill, whose spilling comes first.
 */
const passDoor = (scene: Scene, { up, down, sill }: DoorWay): boolean => {
  const [from, to] = [poolOf(scene, up), poolOf(scene, down)];
  if (from === to || from.volume <= NOTHING) return false;
  const roomLeft = capacity(scene, to) - to.volume;
  const most = Math.min(from.volume, Math.max(roomLeft, 1e-3 * from.volume));
  const excess = (moved: number): number =>
    heightFor(scene.stock, from.row, from.volume - moved) -
    Math.max(heightFor(scene.stock, to.row, to.volume + moved), sill);
  if (excess(0) <= 0) return false;
  let moved = most;
  if (excess(most) < 0) {
    let least = 0;
    for (let i = 0; i < 40; i++) {
      const middle = (least + moved) / 2;
      if (excess(middle) > 0) least = middle;
      else moved = middle;
    }
  }
  if (moved <= NOTHING) return false;
  from.volume -= moved;
  to.volume += moved;
  return true;
};

/** Pools at rest for one direction of gravity, from a volume in each hollow. */
export const poolsOf = (basins: Basins, stock: Stock, volumes: readonly number[]): readonly Pool[] => {
  const owner = volumes.map((volume, k): Pool => ({ hollows: [k], row: rowOf(stock, [k]), volume }));
  const scene: Scene = { basins, stock, owner };
  for (let turn = 0; turn < 100_000; turn++) {
    if (spillOnce(scene)) continue;
    if (basins.doors.some((door) => passDoor(scene, door))) continue;
    return [...new Set(scene.owner)];
  }
  throw new Error('The pools of the grid do not come to rest.');
};

export const levelOf = (stock: Stock, pool: Pool): number => heightFor(stock, pool.row, pool.volume);

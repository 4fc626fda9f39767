import { freeze, type Vec2 } from '../numeric/index.js';
import { bestClear, HIGHEST, LOWEST, NEAREST, type ShiftRange } from './clear-search.js';
import { isClear, leastSpare, type RoomPair, type Spare } from './room-space.js';

/** What one thing of the car would have to give for the engine to clear everything somewhere. */
export interface RoomGive {
  readonly obstacle: string;
  /** Which way it, or its near face, has to go. */
  readonly toward: 'forward' | 'rearward' | 'up' | 'down';
  /** mm */
  readonly by: number;
  /** Shift of the engine at which that is enough: forward, up; mm. */
  readonly at: Vec2;
}

const WAYS: readonly (readonly [RoomGive['toward'], Vec2])[] = [
  ['down', [0, -1]],
  ['up', [0, 1]],
  ['forward', [1, 0]],
  ['rearward', [-1, 0]],
];
/** Nothing is asked to give more than this, mm. */
export const MOST_GIVE = 150;
/** Places looked at across and down the range before the best is refined. */
const ACROSS = 21;
const DOWN = 11;
/** The place is refined to this, mm. */
const FINEST = 0.5;
/** Room short by less than this is enough, mm. */
const NOTHING = 0.05;

/**
 * For each obstacle, the least that it would have to move for some place to be clear of everything, the rest as
 * it is; least first. Each figure is enough where it says; places between those looked at may need a little less.
 *
 * @param tell Share of the work done, 0–1.
 */
export const roomGives = (
  pairs: readonly RoomPair[],
  range: ShiftRange,
  tell: (share: number) => void = () => {},
): readonly RoomGive[] => {
  const places = gridOf(range);
  const obstacles = [...new Set(pairs.map(({ obstacle }) => obstacle))];
  const gives = obstacles.flatMap((obstacle, done) => {
    const told = (share: number): void => tell((done + share) / obstacles.length);
    const its = pairs.filter((pair) => pair.obstacle === obstacle);
    const others = pairs.filter((pair) => pair.obstacle !== obstacle);
    const free = (at: Vec2): boolean => isClear(others, at);
    let best: RoomGive | null = null;
    const tried = (at: Vec2): void => {
      if (!free(at)) return;
      for (const [toward, way] of WAYS) {
        const by = leastGive(its, at, way, best?.by ?? MOST_GIVE);
        if (by !== null) best = { obstacle, toward, by, at };
      }
    };
    const spareOfOthers = (at: Vec2): Spare => leastSpare(others, at);
    const nearest = bestClear(range, spareOfOthers, NEAREST, (share) => told(share / 4));
    // Where the others leave no place, this one alone is no help.
    if (nearest.found === null && nearest.proved) return [];
    for (const found of [
      nearest.found,
      bestClear(range, spareOfOthers, LOWEST, (share) => told((1 + share) / 4)).found,
      bestClear(range, spareOfOthers, HIGHEST, (share) => told((2 + share) / 4)).found,
    ])
      if (found !== null) tried(found.at);
    places.forEach((at, i) => {
      told((3 + i / places.length) / 4);
      tried(at);
    });
    for (let step = (range.foreAft[1] - range.foreAft[0]) / (ACROSS - 1); step > FINEST / 2; step /= 2) {
      const from: RoomGive | null = best;
      if (from === null) break;
      const [x, z] = (from as RoomGive).at;
      for (const [dx, dz] of [
        [1, 0],
        [-1, 0],
        [0, 1],
        [0, -1],
      ] as const)
        tried([x + dx * step, z + dz * step]);
    }
    return best === null ? [] : [best as RoomGive];
  });
  return freeze(gives.sort((a, b) => a.by - b.by));
};

const gridOf = ({ foreAft, height }: ShiftRange): readonly Vec2[] => {
  const on = ([a, b]: Vec2, i: number, count: number): number => a + ((b - a) * i) / (count - 1);
  const all = Array.from(
    { length: ACROSS * DOWN },
    (_, i): Vec2 => [on(foreAft, i % ACROSS, ACROSS), on(height, Math.floor(i / ACROSS), DOWN)],
  );
  // Near places first: they are the likely ones, and a small figure found early spares the rest.
  return all.sort((a, b) => Math.hypot(...a) - Math.hypot(...b));
};

/**
 * How far an obstacle must go one way for its pairs to be clear; null when it is not under `limit`. It goes in
 * strides of what is short: no shorter way can be enough.
 */
const leastGive = (its: readonly RoomPair[], at: Vec2, way: Vec2, limit: number): number | null => {
  let by = 0;
  for (;;) {
    // The obstacle going one way is the engine going the other.
    const { spare } = leastSpare(its, [at[0] - by * way[0], at[1] - by * way[1]]);
    if (spare >= -NOTHING) return by;
    by += -spare;
    if (by >= limit) return null;
  }
};

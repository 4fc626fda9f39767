import { freeze, type Vec2 } from '../numeric/index.js';
import {
  bestClear,
  type ClearPlace,
  HIGHEST,
  LOWEST,
  NEAREST,
  roomiest,
  type ShiftRange,
} from './clear-search.js';
import { leastSpare, type RoomPair, type Spare } from './room-space.js';

/** How far the engine can go one way before something binds. */
export interface RoomSide {
  readonly toward: 'forward' | 'rearward' | 'up' | 'down';
  /** mm; the range's own end where nothing binds. */
  readonly by: number;
  /** null: nothing within the range. */
  readonly binds: string | null;
}

/** A place where the engine can stand, and what it meets next. */
export interface RoomPlace {
  /** Shift from where the design has the engine: forward, up; mm. */
  readonly at: Vec2;
  /** What is met next in the direction that was searched. */
  readonly binds: string;
}

/** Where the engine can stand, fore and aft and in height, with everything clear at its worst. */
export interface EngineRoom {
  readonly range: ShiftRange;
  readonly clear: boolean;
  /** What is shortest where the engine stands, and by how much it has more than wanted, mm. */
  readonly here: { readonly binds: string; readonly spare: number };
  /** Nearest clear place; null when none is in the range. */
  readonly nearest: RoomPlace | null;
  readonly lowest: RoomPlace | null;
  readonly highest: RoomPlace | null;
  /** Where the least spare room is the greatest; asked only where the engine as it is does not clear. */
  readonly roomiest: (RoomPlace & { readonly spare: number }) | null;
  /** From where it stands, or from the roomiest place where that is not clear. */
  readonly sides: readonly RoomSide[];
  readonly map: RoomMap;
  /** False: the search was stopped before every place was settled. */
  readonly proved: boolean;
}

/** Spare room on a grid of shifts, rows from high to low; `binds` counts into `names`. */
export interface RoomMap {
  readonly foreAft: readonly number[];
  readonly height: readonly number[];
  readonly names: readonly string[];
  readonly spare: readonly (readonly number[])[];
  readonly binds: readonly (readonly number[])[];
}

const SIDES: readonly (readonly [RoomSide['toward'], Vec2])[] = [
  ['forward', [1, 0]],
  ['rearward', [-1, 0]],
  ['up', [0, 1]],
  ['down', [0, -1]],
];
/** EngineRoom less than this is none, mm. */
const NOTHING = 0.1;
const MOST_STRIDES = 400;

/**
 * Where the engine can stand, fore and aft and in height, and what binds on each side.
 *
 * @param steps Places across and down the map.
 * @param tell Share of the work done, 0–1.
 */
export const roomToMove = (
  pairs: readonly RoomPair[],
  range: ShiftRange,
  steps: Vec2,
  tell: (share: number) => void = () => {},
): EngineRoom => {
  let hint = 0;
  const spareAt = (at: Vec2): Spare => {
    const found = leastSpare(pairs, at, hint);
    hint = found.binds;
    return found;
  };
  const nameOf = (i: number): string => pairs[i]?.name ?? '';
  const searches = [NEAREST, LOWEST, HIGHEST].map((aim, i) => {
    const told = (share: number): void => tell((i + share) / 5);
    return bestClear(range, spareAt, aim, told);
  });
  tell(3 / 5);
  const [nearest, lowest, highest] = searches.map(({ found }) => found);
  const here = spareAt([0, 0]);
  const clear = here.spare >= 0;
  const place = (found: ClearPlace | null | undefined, past: (at: Vec2) => Vec2): RoomPlace | null =>
    found ? { at: found.at, binds: nameOf(spareAt(past(found.at)).binds) } : null;
  // Where all is clear already the sides say enough.
  const most = nearest === null || clear ? null : roomiest(range, spareAt);
  const from: Vec2 | null = clear ? [0, 0] : most;
  const sides =
    from === null ? [] : SIDES.map(([toward, way]) => side(toward, from, way, range, spareAt, nameOf));
  return freeze({
    range,
    clear,
    here: { binds: nameOf(here.binds), spare: here.spare },
    nearest: place(nearest, ([x, z]) => [x, z]),
    lowest: place(lowest, ([x, z]) => [x, z - 1]),
    highest: place(highest, ([x, z]) => [x, z + 1]),
    roomiest:
      most === null ? null : { at: most, spare: spareAt(most).spare, binds: nameOf(spareAt(most).binds) },
    sides,
    map: mapOf(pairs, viewOf(range, from, [nearest, lowest, highest], sides), steps, spareAt),
    proved: searches.every(({ proved }) => proved),
  });
};

/**
 * Strides along a straight way, each as long as the room there is: a stride cannot pass over anything, so the
 * first thing that binds is found.
 */
const side = (
  toward: RoomSide['toward'],
  from: Vec2,
  way: Vec2,
  { foreAft, height }: ShiftRange,
  spareAt: (at: Vec2) => Spare,
  nameOf: (i: number) => string,
): RoomSide => {
  const end =
    way[0] !== 0
      ? way[0] * ((way[0] > 0 ? foreAft[1] : foreAft[0]) - from[0])
      : way[1] * ((way[1] > 0 ? height[1] : height[0]) - from[1]);
  let by = 0;
  for (let i = 0; i < MOST_STRIDES; i++) {
    const { spare, binds } = spareAt([from[0] + by * way[0], from[1] + by * way[1]]);
    if (spare < NOTHING) return { toward, by, binds: nameOf(binds) };
    by += spare;
    if (by >= end) return { toward, by: end, binds: null };
  }
  return { toward, by, binds: nameOf(spareAt([from[0] + by * way[0], from[1] + by * way[1]]).binds) };
};

/** Least width of the map’s margin, and what its edges are rounded to, mm. */
const MARGIN = 10;
const ROUND = 5;

/** The part of the range worth drawing: all that was found and where the engine is, with a margin around. */
const viewOf = (
  range: ShiftRange,
  from: Vec2 | null,
  found: readonly (ClearPlace | null | undefined)[],
  sides: readonly RoomSide[],
): ShiftRange => {
  if (from === null) return range;
  const ends = sides.map(({ toward, by }): Vec2 => {
    const way = SIDES.find(([name]) => name === toward)?.[1] ?? [0, 0];
    return [from[0] + by * way[0], from[1] + by * way[1]];
  });
  const points: readonly Vec2[] = [[0, 0], from, ...ends, ...found.flatMap((one) => (one ? [one.at] : []))];
  const along = (k: 0 | 1, [least, most]: Vec2): Vec2 => {
    const values = points.map((p) => p[k]);
    const [low, high] = [Math.min(...values), Math.max(...values)];
    const pad = Math.max(MARGIN, (high - low) / 4);
    return [
      Math.max(least, ROUND * Math.floor((low - pad) / ROUND)),
      Math.min(most, ROUND * Math.ceil((high + pad) / ROUND)),
    ];
  };
  return { foreAft: along(0, range.foreAft), height: along(1, range.height) };
};

const mapOf = (
  pairs: readonly RoomPair[],
  { foreAft, height }: ShiftRange,
  [across, down]: Vec2,
  spareAt: (at: Vec2) => Spare,
): RoomMap => {
  const grid = ([a, b]: Vec2, count: number): readonly number[] =>
    Array.from({ length: count }, (_, i) => a + ((b - a) * i) / (count - 1));
  const xs = grid(foreAft, across);
  const zs = [...grid(height, down)].reverse();
  const cells = zs.map((z) => xs.map((x) => spareAt([x, z])));
  return {
    foreAft: xs,
    height: zs,
    names: pairs.map(({ name }) => name),
    spare: cells.map((line) => line.map(({ spare }) => spare)),
    binds: cells.map((line) => line.map(({ binds }) => binds)),
  };
};

/** What another tilt of the engine does: whether all is clear where it stands, and how low it can then sit. */
export interface TiltRoom {
  readonly here: Spare;
  readonly lowest: RoomPlace | null;
  readonly proved: boolean;
}

/** Where the engine can stand at one tilt. */
export const roomAtTilt = (pairs: readonly RoomPair[], range: ShiftRange): TiltRoom => {
  const spareAt = (at: Vec2): Spare => leastSpare(pairs, at);
  const { found, proved } = bestClear(range, spareAt, LOWEST);
  const binds = found === null ? '' : (pairs[spareAt([found.at[0], found.at[1] - 1]).binds]?.name ?? '');
  return freeze({
    here: spareAt([0, 0]),
    lowest: found === null ? null : { at: found.at, binds },
    proved,
  });
};

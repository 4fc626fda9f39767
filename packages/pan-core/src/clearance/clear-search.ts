import { bestFirst } from '../geometry/index.js';
import type { Vec2 } from '../numeric/index.js';
import { CAP, type Spare } from './room-space.js';

/** A rectangle of shifts: fore-aft from, to; height from, to; mm. */
export interface ShiftRange {
  readonly foreAft: Vec2;
  readonly height: Vec2;
}

/** What is to be as little as can be; changes no faster than the shift does. */
export interface Aim {
  readonly value: (at: Vec2) => number;
  /** The shift no farther than `by` from another that has the least of it. */
  readonly better: (at: Vec2, by: number) => Vec2;
}

export const LOWEST: Aim = { value: ([, z]) => z, better: ([x, z], by) => [x, z - by] };
export const HIGHEST: Aim = { value: ([, z]) => -z, better: ([x, z], by) => [x, z + by] };
export const NEAREST: Aim = {
  value: ([x, z]) => Math.hypot(x, z),
  better: ([x, z], by) => {
    const size = Math.hypot(x, z);
    const k = size <= by ? 0 : 1 - by / size;
    return [x * k, z * k];
  },
};

export interface ClearPlace {
  readonly at: Vec2;
  readonly value: number;
  /** Nothing clear has a value below this. */
  readonly bound: number;
}

interface Square {
  readonly at: Vec2;
  readonly half: Vec2;
  readonly lower: number;
}

/** The place is the best to within this, mm. */
export const WITHIN = 0.5;
const MOST_LOOKS = 6000;
/** Room all round is often the same over a wide stretch, where no square is better than the next. */
const FEWER_LOOKS = 1000;

/**
 * The clear shift with the least of an aim. A distance changes no faster than the engine moves, so that one look
 * clears, or shuts, a whole disc around it: squares are halved, the most promising first, until none that is left
 * can hold anything better by half a millimetre. null: nothing in the range is clear (or, past 6,000 looks,
 * nothing was found; `proved` says which).
 *
 * @param tell Share of the most looks taken, 0–1.
 */
export const bestClear = (
  range: ShiftRange,
  spare: (at: Vec2) => Spare,
  aim: Aim,
  tell: (share: number) => void = () => {},
): { readonly found: ClearPlace | null; readonly proved: boolean } => {
  const open = bestFirst<Square>((square) => -square.lower);
  const push = (at: Vec2, half: Vec2): void => {
    open.push({ at, half, lower: aim.value(at) - Math.hypot(half[0], half[1]) });
  };
  const {
    foreAft: [x0, x1],
    height: [z0, z1],
  } = range;
  push([(x0 + x1) / 2, (z0 + z1) / 2], [(x1 - x0) / 2, (z1 - z0) / 2]);
  const inRange = ([x, z]: Vec2): boolean => x >= x0 && x <= x1 && z >= z0 && z <= z1;
  let best: { readonly at: Vec2; readonly value: number } | null = null;
  for (let looks = 0; ; looks++) {
    const square = open.pop();
    if (square === undefined || (best !== null && square.lower >= best.value - WITHIN)) {
      return { found: best === null ? null : { ...best, bound: best.value - WITHIN }, proved: true };
    }
    if (looks === MOST_LOOKS) {
      return { found: best === null ? null : { ...best, bound: square.lower }, proved: false };
    }
    tell(looks / MOST_LOOKS);
    const { at, half } = square;
    const room = spare(at).spare;
    const reach = Math.hypot(half[0], half[1]);
    if (room >= 0) {
      const trial = [aim.better(at, room), at].find(inRange);
      if (trial !== undefined && (best === null || aim.value(trial) < best.value)) {
        best = { at: trial, value: aim.value(trial) };
      }
    }
    if (-room > reach || reach < WITHIN / 4) continue;
    for (const [middle, cut] of halved(square)) push(middle, cut);
  }
};

/**
 * The shift with the most room all round: its least spare room is the greatest there is, to within half a
 * millimetre unless a thousand looks do not settle it. Spare room grows no faster than the engine moves, which
 * bounds each square. null: nothing clears.
 */
export const roomiest = (range: ShiftRange, spare: (at: Vec2) => Spare): Vec2 | null => {
  const open = bestFirst<Square>((square) => square.lower);
  const {
    foreAft: [x0, x1],
    height: [z0, z1],
  } = range;
  let best: { readonly at: Vec2; readonly room: number } = {
    at: [0, 0],
    room: Math.max(0, spare([0, 0]).spare),
  };
  let found = spare([0, 0]).spare >= 0;
  const push = (at: Vec2, half: Vec2): void => {
    const room = spare(at).spare;
    if (room > best.room || (!found && room >= 0)) {
      best = { at, room };
      found = true;
    }
    const most = room + Math.hypot(half[0], half[1]);
    if (most > best.room + WITHIN) open.push({ at, half, lower: most });
  };
  push([(x0 + x1) / 2, (z0 + z1) / 2], [(x1 - x0) / 2, (z1 - z0) / 2]);
  for (let looks = 0; looks < FEWER_LOOKS; looks++) {
    const square = open.pop();
    if (square === undefined || Math.min(square.lower, CAP) <= best.room + WITHIN) break;
    for (const [at, half] of halved(square)) push(at, half);
  }
  return found ? best.at : null;
};

const halved = ({ at, half }: Square): readonly (readonly [Vec2, Vec2])[] => {
  const long = half[0] >= half[1];
  const cut: Vec2 = long ? [half[0] / 2, half[1]] : [half[0], half[1] / 2];
  const off: Vec2 = long ? [cut[0], 0] : [0, cut[1]];
  return [
    [[at[0] - off[0], at[1] - off[1]], cut],
    [[at[0] + off[0], at[1] + off[1]], cut],
  ];
};

import { cross2, dot2, subtract2, unit2 } from '../geometry/index.js';
import type { Vec2 } from '../numeric/index.js';
import type { Fold, Part } from './part.js';

/** An order in which a part can be bent on a straight brake. */
export interface FoldOrder {
  readonly order: readonly Fold[];
  /** The first fold at which sheet already folded runs into the punch; null when none does. */
  readonly fouls: Fold | null;
  /** Least distance of folded sheet from the middle of the punch as far as the first that fouls, mm; infinite where none comes near. */
  readonly room: number;
}

/** Folds nearer than this to one direction lie across one strip, radians. */
const PARALLEL = 0.02;
/** Shares of the stroke at which the sheet is looked at. */
const STROKE = [0.25, 0.5, 0.75, 1];
/** More folds than this are taken from the ends inwards without trying every order. */
const MOST_TRIED = 7;

/**
 * The order that keeps most clear of a punch standing straight over the fold, for a part whose folds all lie
 * across one strip; null for any other. The strip is a chain in the plane across its folds, each bend a
 * corner at the middle of its zone; outer folds first where two orders are alike.
 *
 * @param half half the punch's thickness, mm
 */
export const foldOrder = (part: Part, half: number): FoldOrder | null => {
  const [first] = part.folds;
  if (first === undefined) return null;
  const along = unit2(subtract2(first.to, first.from));
  if (part.folds.some((f) => Math.abs(cross2(along, unit2(subtract2(f.to, f.from)))) > PARALLEL)) return null;
  const across: Vec2 = [-along[1], along[0]];
  const place = (p: Vec2): number => dot2(p, across);
  const ends = part.outline.map((s) => place(s.from));
  const chain = [...part.folds]
    .map((fold) => ({ fold, at: (place(fold.from) + place(fold.to)) / 2 }))
    .sort((a, b) => a.at - b.at);
  const [low, high] = [Math.min(...ends), Math.max(...ends)];
  const roomAt = (k: number, done: ReadonlySet<number>): number =>
    Math.min(...STROKE.map((share) => leastX(chain, low, high, k, done, share)));
  const outerFirst = chain.map((_, i) => i).sort((a, b) => depth(a, chain.length) - depth(b, chain.length));
  const best = chain.length > MOST_TRIED ? follow(outerFirst, roomAt) : search(outerFirst, roomAt, half);
  const stop = best.rooms.findIndex((room) => room < half);
  const order = best.order.map((i) => chain[i]!.fold);
  return {
    order,
    fouls: stop < 0 ? null : order[stop]!,
    room: Math.min(...(stop < 0 ? best.rooms : best.rooms.slice(0, stop + 1))),
  };
};

interface Tried {
  readonly order: readonly number[];
  readonly rooms: readonly number[];
}

const depth = (i: number, count: number): number => Math.min(i, count - 1 - i);

const follow = (
  order: readonly number[],
  roomAt: (k: number, done: ReadonlySet<number>) => number,
): Tried => ({
  order,
  rooms: order.map((k, i) => roomAt(k, new Set(order.slice(0, i)))),
});

/** Tries every order until one fouls nothing; else the one that gets furthest. */
const search = (
  folds: readonly number[],
  roomAt: (k: number, done: ReadonlySet<number>) => number,
  half: number,
): Tried => {
  let best: Tried = { order: [], rooms: [] };
  const go = (order: readonly number[], rooms: readonly number[]): boolean => {
    if (order.length > best.order.length) best = { order, rooms };
    if (order.length === folds.length) return true;
    const done = new Set(order);
    return folds.some((k) => {
      if (done.has(k)) return false;
      const room = roomAt(k, done);
      return room >= half && go([...order, k], [...rooms, room]);
    });
  };
  if (go([], [])) return best;
  return follow([...best.order, ...folds.filter((k) => !best.order.includes(k))], roomAt);
};

/**
 * How near the sheet comes to the punch's middle plane when fold k is bent by a share of its angle, the folds
 * in `done` standing at theirs: both legs rise from the fold by half the turn, towards the punch.
 */
const leastX = (
  chain: readonly { readonly fold: Fold; readonly at: number }[],
  low: number,
  high: number,
  k: number,
  done: ReadonlySet<number>,
  share: number,
): number => {
  const own = chain[k]!.fold;
  const up = own.direction;
  let least = Number.POSITIVE_INFINITY;
  for (const way of [-1, 1]) {
    const start = (own.angle * share) / 2;
    let [x, y, heading, at] = [0, 0, start, chain[k]!.at];
    for (let i = k + way; ; i += way) {
      const next = chain[i];
      const to = next === undefined ? (way < 0 ? low : high) : next.at;
      const length = Math.abs(to - at);
      [x, y, at] = [x + length * Math.cos(heading), y + length * Math.sin(heading), to];
      // A leg still straight from the fold keeps clear by itself; below the fold there is no punch.
      if (y > 0 && heading !== start) least = Math.min(least, x);
      if (next === undefined) break;
      if (done.has(i)) heading += next.fold.direction === up ? next.fold.angle : -next.fold.angle;
    }
  }
  return least;
};

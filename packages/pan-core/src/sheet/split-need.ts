import type { Design } from '../design/index.js';
import { distance2 } from '../geometry/index.js';
import type { Part } from './part.js';
import { sheetRoom } from './sheet-room.js';
import practice from './split-practice.json' with { type: 'json' };

/** Why a part must be cut apart, and between which places so that the fewest pieces come of it. */
export interface SplitNeed {
  readonly why: 'sheet' | 'brake';
  readonly axis: 0 | 1;
  /** Stretches of the axis in which the next seam may lie, mm. */
  readonly windows: readonly (readonly [low: number, high: number])[];
}

/** Shorter than this by rounding alone, mm. */
const SAME = 1e-6;

/** What of a part is too large: its blank for the sheet, or a fold for the brake; null where nothing is. */
export const splitNeed = (design: Design, part: Part): SplitNeed | null => {
  const room = sheetRoom(design, part);
  const shares = ([0, 1] as const).map((k) => part.flat[k] / Math.max(room[k], SAME));
  const axis = shares[0]! >= shares[1]! ? 0 : 1;
  if (part.flat[axis] > room[axis] + SAME) return need('sheet', axis, [0, part.flat[axis]], room[axis]);
  const { longest } = design.shop.brake;
  const over = part.folds.filter((f) => longest !== null && distance2(f.from, f.to) > longest + SAME);
  if (longest === null || over.length === 0) return null;
  const fold = over.reduce((a, b) => (distance2(b.from, b.to) > distance2(a.from, a.to) ? b : a));
  const d = [0, 1].map((k) => Math.abs(fold.to[k as 0 | 1] - fold.from[k as 0 | 1]));
  const way = d[0]! >= d[1]! ? 0 : 1;
  const [a, b] = [fold.from[way], fold.to[way]];
  // A fold aslant is longer than its reach along the axis, in every piece alike.
  const reach = (longest * d[way]!) / distance2(fold.from, fold.to);
  return need('brake', way, [Math.min(a, b), Math.max(a, b)], reach);
};

/** A first piece of one room or more, as long as what is left takes no piece more than need be. */
const need = (
  why: SplitNeed['why'],
  axis: 0 | 1,
  [low, high]: readonly [number, number],
  room: number,
): SplitNeed | null => {
  const pieces = Math.ceil((high - low - SAME) / room);
  if (!(room > 0) || pieces > practice.most_pieces) return null;
  // Parted as evenly as can be; from both ends alike, so that a mirrored part is cut at the mirrored place.
  const firsts = [...new Set([Math.floor(pieces / 2), Math.ceil(pieces / 2)])];
  return {
    why,
    axis,
    windows: firsts.map((k) => [Math.max(low, high - (pieces - k) * room), Math.min(high, low + k * room)]),
  };
};

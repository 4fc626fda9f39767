import type { Design } from '../design/index.js';
import { pathBox } from '../geometry/index.js';
import type { Vec2 } from '../numeric/index.js';
import practice from './joint-practice.json' with { type: 'json' };
import type { Part } from './part.js';

/** More pieces than this are not made of one part without being asked for. */
const MOST_PIECES = 4;
/** A mark longer than this along the part cannot be kept clear of, mm: the seam crosses it. */
const LONG_MARK = 60;

/** Longer and shorter side of what may be cut from the sheet, mm. */
export const sheetRoom = ({ shop: { sheet, edge } }: Design): Vec2 => {
  const [a, b] = sheet.map((side) => side - 2 * edge) as [number, number];
  return a > b ? [a, b] : [b, a];
};

/** Whether a part can be laid on the sheet. */
export const fitsRoom = ({ flat }: Pick<Part, 'flat'>, [long, short]: Vec2): boolean =>
  Math.max(...flat) <= long && Math.min(...flat) <= short;

/** What a piece says on its rim. */
export const seamWords = (other: string): string => `weld to ${other}`;

interface Kept {
  readonly from: number;
  readonly to: number;
  readonly what: string;
}

/** Stretches along the part that a seam keeps off: bends, holes, and what is welded to it inside. */
const keptClear = (part: Part): readonly Kept[] => {
  const t = part.thickness;
  const own = new Set((part.seams ?? []).map(({ other }) => seamWords(other)));
  const fold = practice.seam_to_fold_in_thicknesses * t;
  const hole = practice.seam_to_hole_in_thicknesses * t;
  const inside = practice.seam_to_inside_in_thicknesses * t;
  return [
    ...part.folds.map(({ name, from, to, allowance }) => ({
      from: Math.min(from[0], to[0]) - allowance / 2 - fold,
      to: Math.max(from[0], to[0]) + allowance / 2 + fold,
      what: `the ${name} bend`,
    })),
    ...part.holes.map(({ at, diameter, what }) => ({
      from: at[0] - diameter / 2 - hole,
      to: at[0] + diameter / 2 + hole,
      what,
    })),
    ...part.marks.flatMap(({ path, what }) => {
      if (path.length === 0 || own.has(what)) return [];
      const { min, max } = pathBox(path);
      return max[0] - min[0] > LONG_MARK ? [] : [{ from: min[0] - inside, to: max[0] + inside, what }];
    }),
  ];
};

/**
 * Where a part is split across so that every piece fits the sheet: the fewest pieces, each seam as near an even
 * share as bends, holes and inside welds leave room. Empty where it fits whole; null where no such seams are.
 *
 * @param room longer and shorter side, mm
 */
export const seamPlaces = (part: Part, room: Vec2): readonly number[] | null => {
  if (fitsRoom(part, room)) return [];
  const [length, width] = part.flat;
  // Along the part there is the longer side of the sheet, unless the part is too wide for that.
  const most = width <= room[1] ? room[0] : width <= room[0] ? room[1] : 0;
  if (most <= 0 || length <= most) return null;
  const kept = keptClear(part);
  for (let count = Math.ceil(length / most); count <= MOST_PIECES; count++) {
    const places: number[] = [];
    for (let k = 1; k < count; k++) {
      const low = Math.max(length - (count - k) * most, places[k - 2] ?? 0);
      const high = (places[k - 2] ?? 0) + most;
      const place = freeNear((length * k) / count, low, high, kept);
      if (place === null) break;
      places.push(place);
    }
    if (places.length === count - 1) return places;
  }
  return null;
};

const freeNear = (wish: number, low: number, high: number, kept: readonly Kept[]): number | null => {
  const free = (x: number): boolean => kept.every(({ from, to }) => x <= from || x >= to);
  const tried = [
    Math.min(Math.max(wish, low), high),
    low,
    high,
    ...kept.flatMap(({ from, to }) => [from, to]),
  ]
    .filter((x) => x >= low && x <= high && free(x))
    .sort((a, b) => Math.abs(a - wish) - Math.abs(b - wish));
  return tried[0] ?? null;
};

/** Least distance from a seam along the part to what it should keep off, and what that is; mm past the edge of it. */
export const seamSpare = (part: Part, along: number): { readonly spare: number; readonly what: string } =>
  keptClear(part)
    .map(({ from, to, what }) => ({ spare: Math.max(from - along, along - to), what }))
    .reduce((a, b) => (b.spare < a.spare ? b : a), { spare: Number.POSITIVE_INFINITY, what: '' });

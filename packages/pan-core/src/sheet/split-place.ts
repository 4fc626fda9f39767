import {
  cross2,
  directionAt,
  dot2,
  lineSegment,
  mix2,
  type Path,
  pathBox,
  segmentLength,
} from '../geometry/index.js';
import type { Vec2 } from '../numeric/index.js';
import { onMaterial } from './finish.js';
import type { Fold, Mark, Part } from './part.js';
import practice from './split-practice.json' with { type: 'json' };

/** A place for a seam across a part's blank and how good it is. */
export interface SplitPlace {
  /** Distance along the axis, mm. */
  readonly at: number;
  /** What lies beside the seam and how far off; null where nothing does. Negative: a hole or bend it would cut. */
  readonly near: { readonly what: string; readonly away: number; readonly hard: boolean } | null;
  readonly crosses: readonly string[];
  readonly length: number;
}

interface Span {
  readonly low: number;
  readonly high: number;
  readonly what: string;
  /** A seam through it cannot be: a hole would be cut in two, a bend welded along its length. */
  readonly hard: boolean;
}

/** How far a seam keeps from bends, holes, corners and feet of baffles, mm. */
export const seamClearance = (thickness: number): number =>
  Math.max(practice.clear_at_least_mm, practice.clear_in_thicknesses * thickness);

/** Steps between a window's middle and its ends. */
const STEPS = 200;
/** Clearance beyond this many times the wish makes nothing easier. */
const EASE = 4;
/** Seams whose lengths differ less count as equally long, mm. */
const AS_LONG = 10;

/**
 * The best place for a seam square to an axis of the blank: clear of what lies beside it as far as is wished,
 * then across the fewest bends, then shortest, then in the open of a flat run, then nearest the window's middle. Null where every place would
 * cut a hole in two or run along a bend.
 */
export const splitPlace = (part: Part, axis: 0 | 1, low: number, high: number): SplitPlace | null => {
  const wish = seamClearance(part.thickness);
  const spans = spansBeside(part, axis);
  const step = Math.max((high - low) / 2, 0) / STEPS;
  const steps = step > 0 ? STEPS : 0;
  let best: { place: SplitPlace; rank: readonly number[] } | null = null;
  for (let i = -steps; i <= steps; i++) {
    const place = placeAt(part, axis, (low + high) / 2 + i * step, spans);
    if (isCut(place)) continue;
    const clear = (most: number): number => Math.round(10 * Math.min(most, place.near?.away ?? most));
    const rank = [
      -clear(wish),
      place.crosses.length,
      Math.round(place.length / AS_LONG),
      -clear(EASE * wish),
      Math.abs(i),
    ];
    if (best === null || isBefore(rank, best.rank)) best = { place, rank };
  }
  return best?.place ?? null;
};

/** A given place, told as {@link splitPlace} tells the best one. */
export const seamAt = (part: Part, axis: 0 | 1, at: number): SplitPlace =>
  placeAt(part, axis, at, spansBeside(part, axis));

/** Whether a seam there would cut a hole in two or run along a bend. */
export const isCut = ({ near }: SplitPlace): boolean => near?.hard === true && near.away <= 0;

const isBefore = (a: readonly number[], b: readonly number[]): boolean => {
  const i = a.findIndex((v, k) => v !== b[k]);
  return i >= 0 && a[i]! < b[i]!;
};

const placeAt = (part: Part, axis: 0 | 1, at: number, spans: readonly Span[]): SplitPlace => {
  let near: SplitPlace['near'] = null;
  for (const { low, high, what, hard } of spans) {
    const away = Math.max(low - at, at - high);
    if (near === null || away < near.away) near = { what, away, hard };
  }
  return { at, near, crosses: crossed(part, axis, at), length: lengthAt(part, axis, at) };
};

const lengthAt = (part: Part, axis: 0 | 1, at: number): number =>
  stretchesAt(part, axis, at).reduce((sum, s) => sum + segmentLength(s), 0);

/** The stretches of a line square to an axis that lie on the material. */
const stretchesAt = (part: Part, axis: 0 | 1, at: number): Path => {
  const { min, max } = pathBox(part.outline);
  const point = (v: number): Vec2 => (axis === 0 ? [at, v] : [v, at]);
  const line = lineSegment(point(min[1 - axis]! - 1), point(max[1 - axis]! + 1));
  return onMaterial(line, [part.outline, ...part.openings]);
};

/** Whether a line lies more across an axis than along it. */
const liesAcross = (from: Vec2, to: Vec2, axis: 0 | 1): boolean =>
  Math.abs(to[axis]! - from[axis]!) < Math.abs(to[1 - axis]! - from[1 - axis]!);

const foldName = ({ name }: Fold): string => `the ${name} bend`;
const markName = ({ what }: Mark): string => what.split(',')[0]!;

const markBox = ({ path }: Mark): { readonly min: Vec2; readonly max: Vec2 } => pathBox(path);

const crossed = (part: Part, axis: 0 | 1, at: number): readonly string[] => {
  const over = (a: number, b: number): boolean => Math.min(a, b) < at && Math.max(a, b) > at;
  const folds = part.folds.filter((f) => !liesAcross(f.from, f.to, axis) && over(f.from[axis]!, f.to[axis]!));
  const marks = part.marks.filter((mark) => {
    const { min, max } = markBox(mark);
    return mark.what !== '' && !liesAcross(min, max, axis) && over(min[axis]!, max[axis]!);
  });
  return [...new Set([...folds.map(foldName), ...marks.map(markName)])];
};

/** Turns of the outline beyond this are corners, radians. */
const CORNER = Math.PI / 18;

const spansBeside = (part: Part, axis: 0 | 1): readonly Span[] => {
  const box = pathBox(part.outline);
  const inner = (v: number): boolean => v > box.min[axis]! + 1 && v < box.max[axis]! - 1;
  const span = (a: number, b: number, reach: number, what: string, hard: boolean): Span => ({
    low: Math.min(a, b) - reach,
    high: Math.max(a, b) + reach,
    what,
    hard,
  });
  const corners = part.outline.flatMap((piece, i): readonly Span[] => {
    const before = part.outline[(i + part.outline.length - 1) % part.outline.length]!;
    const [u, v] = [directionAt(before, 1), directionAt(piece, 0)];
    const arc = pathBox([piece]);
    const formed =
      piece.kind === 'arc' && inner((arc.min[axis]! + arc.max[axis]!) / 2)
        ? [span(arc.min[axis]!, arc.max[axis]!, 0, 'a formed corner', false)]
        : [];
    const turn = Math.abs(Math.atan2(cross2(u, v), dot2(u, v)));
    const at = piece.from[axis]!;
    return turn > CORNER && inner(at)
      ? [...formed, span(at, at, 0, 'a corner of the outline', false)]
      : formed;
  });
  return [
    ...part.folds
      .filter((f) => liesAcross(f.from, f.to, axis))
      .map((f) => span(f.from[axis]!, f.to[axis]!, f.allowance / 2, foldName(f), true)),
    ...[...part.holes, ...(part.pilots ?? [])].map(({ at, diameter, what }) =>
      span(at[axis]!, at[axis]!, diameter / 2, what, true),
    ),
    ...part.marks.flatMap((mark): readonly Span[] => {
      const { min, max } = markBox(mark);
      const round = Math.abs(max[0] - min[0] - (max[1] - min[1])) < 1e-6;
      if (mark.what === '' || !(round || liesAcross(min, max, axis))) return [];
      return [span(min[axis]!, max[axis]!, 0, markName(mark), false)];
    }),
    ...part.openings.map((opening) => {
      const { min, max } = pathBox(opening);
      return span(min[axis]!, max[axis]!, 0, 'an opening', false);
    }),
    ...corners,
  ];
};

/** Where a seam's line runs over the material, as points of the blank. */
export const seamPoints = (part: Part, axis: 0 | 1, at: number): readonly Vec2[] =>
  stretchesAt(part, axis, at).flatMap((s) => [0, 0.25, 0.5, 0.75, 1].map((t) => mix2(s.from, s.to, t)));

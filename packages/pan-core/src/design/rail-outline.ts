import {
  type Affine,
  type Curve,
  circleThrough,
  curveChords,
  joinLines,
  moveCurve,
  NO_MAP,
  scaleMap,
  shiftMap,
  simplifyLoop,
  thenMap,
  turnMap,
} from '../geometry/index.js';
import type { Vec2 } from '../numeric/index.js';
import type { Drawing } from './drawing.js';

/** A round hole on the page, mm. */
export interface DrawnHole {
  readonly at: Vec2;
  readonly diameter: number;
}

/** How a drawing lies on the page of the rail: x up the page to the front, y to its left. */
export interface Placing {
  /** mm in one unit of the drawing. */
  readonly unit: number;
  /** What lengths along the drawing's X and Y are to be multiplied by. */
  readonly scale: Vec2;
  /** Point as drawn, mm, at the rear face of the block on the crank's centre line. */
  readonly origin: Vec2;
  /** Direction as drawn in which the front lies; any length. */
  readonly forward: Vec2;
}

/** Chords and corners left out together stay within this of what was drawn, mm. */
export const DRAWN_WITHIN = 0.05;
const CHORDS = 0.02;
const CORNERS = 0.03;

/** From mm as drawn to the page. */
export const placingMap = ({ scale, origin, forward }: Placing): Affine =>
  [
    shiftMap([0 - origin[0], 0 - origin[1]]),
    scaleMap(scale[0], scale[1]),
    turnMap(-Math.atan2(forward[1] * scale[1], forward[0] * scale[0])),
  ].reduce(thenMap, NO_MAP);

export interface DrawnRail {
  /** The largest closed line, corners in order; null when nothing closes. */
  readonly outline: readonly Vec2[] | null;
  readonly holes: readonly DrawnHole[];
  /** Whether anything but straight lines had to become chords, or corners were left out. */
  readonly rounded: boolean;
  readonly gaps: readonly { readonly at: Vec2; readonly wide: number }[];
  /** Ends of lines that meet no other, nearest first to one another: where an outline is likely broken. */
  readonly loose: readonly (readonly [Vec2, Vec2])[];
  readonly forks: readonly Vec2[];
  readonly otherLoops: number;
  readonly otherLines: number;
  readonly doubled: number;
}

const FULL = 2 * Math.PI - 1e-9;

/** A full circle, as near as any drill can tell; null for anything else. */
const circleOf = (curve: Curve): DrawnHole | null => {
  if (curve.kind !== 'ellipse' || Math.abs(curve.to - curve.from) < FULL) return null;
  const { at, u, v } = curve;
  const [a, b] = [Math.hypot(...u), Math.hypot(...v)];
  const skew = Math.abs(u[0] * v[0] + u[1] * v[1]) / (a * b);
  // Two scales of a scanner that differ by a per cent make ovals of holes, which are still holes.
  if (Math.abs(a - b) > 0.05 * Math.max(a, b) || skew > 0.05) return null;
  return { at, diameter: 2 * Math.sqrt(Math.abs(u[0] * v[1] - u[1] * v[0])) };
};

/** Outline and holes of a drawing on the page; lines whose ends lie within `close` are one. */
export const drawnRail = (
  drawing: Drawing,
  placing: Placing,
  close: number,
  layer: string | null = null,
): DrawnRail => {
  const map = thenMap(scaleMap(placing.unit, placing.unit), placingMap(placing));
  const wanted = drawing.curves.filter((one) => layer === null || one.layer === layer);
  const curves = wanted.map(({ curve }) => moveCurve(curve, map));
  const circles = curves.flatMap((curve) => circleOf(curve) ?? []);
  const others = curves.filter((curve) => circleOf(curve) === null);
  const lines = others.map((curve) => curveChords(curve, CHORDS));
  const { loops, open, gaps, forks, doubled } = joinLines(lines, Math.max(close, 1e-6));
  const ranked = loops
    .map((loop) => ({ loop, area: Math.abs(areaOf(loop)), hole: circleThrough(loop) }))
    .sort((a, b) => b.area - a.area);
  const shapes = ranked.filter(({ hole }) => hole === null);
  const drawn = shapes[0]?.loop ?? null;
  const outline = drawn === null ? null : simplifyLoop(withoutRepeats(drawn), CORNERS);
  const round = ranked.flatMap(({ hole }) => hole ?? []);
  return {
    outline,
    holes: [...circles, ...round],
    rounded:
      others.some(({ kind }) => kind !== 'straight') || (drawn?.length ?? 0) !== (outline?.length ?? 0),
    gaps,
    loose: loosePairs(open),
    forks,
    otherLoops: Math.max(0, shapes.length - 1),
    otherLines: open.length,
    doubled,
  };
};

const areaOf = (loop: readonly Vec2[]): number =>
  loop.reduce((sum, [x, y], i) => {
    const [nextX, nextY] = loop[(i + 1) % loop.length] as Vec2;
    return sum + (x * nextY - nextX * y) / 2;
  }, 0);

const withoutRepeats = (loop: readonly Vec2[]): readonly Vec2[] =>
  loop.filter((p, i) => {
    const last = loop[(i + loop.length - 1) % loop.length] as Vec2;
    return Math.hypot(p[0] - last[0], p[1] - last[1]) > 1e-6;
  });

const MOST_LOOSE = 400;

/** Loose ends in pairs, the nearest pair first. */
const loosePairs = (open: readonly (readonly Vec2[])[]): readonly (readonly [Vec2, Vec2])[] => {
  const ends = open.flatMap((line) => [line[0] as Vec2, line[line.length - 1] as Vec2]).slice(0, MOST_LOOSE);
  const pairs = ends.flatMap((p, i) => ends.slice(i + 1).map((q) => [p, q] as const));
  return pairs.sort(([a, b], [c, d]) => gapOf(a, b) - gapOf(c, d)).slice(0, 3);
};

const gapOf = (a: Vec2, b: Vec2): number => Math.hypot(a[0] - b[0], a[1] - b[1]);

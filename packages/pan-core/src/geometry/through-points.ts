import type { Vec2 } from '../numeric/index.js';
import type { NurbsCurve } from './curve.js';
import { distance2, length2, unit2 } from './path-vector.js';

/** Directions in which a curve leaves its first point and reaches its last; null where nobody says. */
export interface EndTangents {
  readonly start: Vec2 | null;
  readonly end: Vec2 | null;
}

/**
 * The cubic spline through points, twice smooth, its parameter running with the chords' lengths; without a tangent
 * an end is free of bending. C. de Boor, A Practical Guide to Splines, chapter IV (from memory). Null when fewer
 * than two points lie apart.
 */
export const splineThrough = (given: readonly Vec2[], { start, end }: EndTangents): NurbsCurve | null => {
  const points = given.filter((at, i) => i === 0 || distance2(given[i - 1] as Vec2, at) > 0);
  if (points.length < 2) return null;
  const spans = points.slice(1).map((at, i) => distance2(points[i] as Vec2, at));
  const slopes = ([0, 1] as const).map((axis) =>
    slopesOf(
      points.map((at) => at[axis]),
      spans,
      unit(start)?.[axis] ?? null,
      unit(end)?.[axis] ?? null,
    ),
  );
  const controls: Vec2[] = [points[0] as Vec2];
  const knots = [0, 0, 0, 0];
  let along = 0;
  spans.forEach((span, i) => {
    const [a, b] = [points[i] as Vec2, points[i + 1] as Vec2];
    const [m, n] = [i, i + 1].map((k): Vec2 => [slopes[0]?.[k] ?? 0, slopes[1]?.[k] ?? 0]) as [Vec2, Vec2];
    const third = span / 3;
    controls.push([a[0] + third * m[0], a[1] + third * m[1]], [b[0] - third * n[0], b[1] - third * n[1]], b);
    along += span;
    knots.push(along, along, along);
  });
  knots.push(along);
  return { kind: 'nurbs', degree: 3, knots, points: controls, weights: controls.map(() => 1) };
};

const unit = (of: Vec2 | null): Vec2 | null => (of === null || length2(of) === 0 ? null : unit2(of));

/** Slopes at the points of one coordinate: equal bending on both sides of each, by elimination from both ends. */
const slopesOf = (
  values: readonly number[],
  spans: readonly number[],
  start: number | null,
  end: number | null,
): readonly number[] => {
  const last = values.length - 1;
  const rise = (i: number): number =>
    ((values[i + 1] as number) - (values[i] as number)) / (spans[i] as number);
  const rows = values.map((_, i): readonly [number, number, number, number] => {
    if (i === 0) return start === null ? [0, 2, 1, 3 * rise(0)] : [0, 1, 0, start];
    if (i === last) return end === null ? [1, 2, 0, 3 * rise(last - 1)] : [0, 1, 0, end];
    const [before, after] = [spans[i - 1] as number, spans[i] as number];
    return [after, 2 * (before + after), before, 3 * (after * rise(i - 1) + before * rise(i))];
  });
  const upper: number[] = [];
  const right: number[] = [];
  rows.forEach(([low, middle, high, value], i) => {
    const pivot = middle - low * (upper[i - 1] ?? 0);
    upper.push(high / pivot);
    right.push((value - low * (right[i - 1] ?? 0)) / pivot);
  });
  const slopes = [...right];
  for (let i = last - 1; i >= 0; i--)
    slopes[i] = (right[i] as number) - (upper[i] as number) * (slopes[i + 1] as number);
  return slopes;
};

import type { Vec2 } from '../numeric/index.js';
import { type Affine, mapGrowth, mapPoint, mapVector } from './affine.js';
import { nurbsChords } from './nurbs.js';

/** Straight pieces from corner to corner. */
export interface StraightCurve {
  readonly kind: 'straight';
  readonly points: readonly Vec2[];
}

/** at + u·cos t + v·sin t, t from `from` to `to` in radians, either way: circles, ellipses and arcs of both. */
export interface EllipseCurve {
  readonly kind: 'ellipse';
  readonly at: Vec2;
  readonly u: Vec2;
  readonly v: Vec2;
  readonly from: number;
  readonly to: number;
}

/** A B-spline with weights; `knots` has points + degree + 1 values. */
export interface NurbsCurve {
  readonly kind: 'nurbs';
  readonly degree: number;
  readonly knots: readonly number[];
  readonly points: readonly Vec2[];
  readonly weights: readonly number[];
}

/** A piece of a drawing in a form that any affine map leaves exact. */
export type Curve = StraightCurve | EllipseCurve | NurbsCurve;

/** A circle, or a part of it, as a curve. */
export const circleCurve = (at: Vec2, radius: number, from = 0, to = 2 * Math.PI): EllipseCurve => ({
  kind: 'ellipse',
  at,
  u: [radius, 0],
  v: [0, radius],
  from,
  to,
});

/** A curve taken through an affine map, without loss. */
export const moveCurve = (curve: Curve, map: Affine): Curve => {
  if (curve.kind !== 'ellipse') return { ...curve, points: curve.points.map((p) => mapPoint(map, p)) };
  return { ...curve, at: mapPoint(map, curve.at), u: mapVector(map, curve.u), v: mapVector(map, curve.v) };
};

/**
 * A polyline's edge whose bulge is the tangent of a quarter of its sweep, positive counter-clockwise (the DXF
 * reference's group 42). Range: |bulge| up to 1e6, a full circle less a hair.
 */
export const bulgeCurve = (from: Vec2, to: Vec2, bulge: number): Curve => {
  const chord: Vec2 = [to[0] - from[0], to[1] - from[1]];
  const length = Math.hypot(...chord);
  if (bulge === 0 || length === 0) return { kind: 'straight', points: [from, to] };
  // Centre from the chord's middle along its left normal by (1 − b²)/(4b) of the chord.
  const off = (1 - bulge * bulge) / (4 * bulge);
  const at: Vec2 = [(from[0] + to[0]) / 2 - chord[1] * off, (from[1] + to[1]) / 2 + chord[0] * off];
  const start = Math.atan2(from[1] - at[1], from[0] - at[0]);
  return circleCurve(at, Math.hypot(from[0] - at[0], from[1] - at[1]), start, start + 4 * Math.atan(bulge));
};

const MOST_STEPS = 2000;

/**
 * Points along a curve so that the chords between them stay within `tolerance` of it. An ellipse is the affine image
 * of a unit circle, so a step h leaves it by at most (1 − cos(h/2)) times the map's largest growth.
 */
export const curveChords = (curve: Curve, tolerance: number): readonly Vec2[] => {
  if (curve.kind === 'straight') return curve.points;
  if (curve.kind === 'nurbs') return nurbsChords(curve, tolerance);
  const { at, u, v, from, to } = curve;
  const reach = mapGrowth([u[0], u[1], v[0], v[1], 0, 0]);
  const step = reach <= tolerance ? Math.PI / 2 : 2 * Math.acos(1 - tolerance / reach);
  const pieces = Math.min(
    MOST_STEPS,
    Math.max(1, Math.ceil(Math.abs(to - from) / Math.min(step, Math.PI / 2))),
  );
  return Array.from({ length: pieces + 1 }, (_, i): Vec2 => {
    const t = from + ((to - from) * i) / pieces;
    const [c, s] = [Math.cos(t), Math.sin(t)];
    return [at[0] + u[0] * c + v[0] * s, at[1] + u[1] * c + v[1] * s];
  });
};

import {
  bulgeCurve,
  type Curve,
  circleCurve,
  moveCurve,
  type NurbsCurve,
  nurbsFault,
  scaleMap,
  splineThrough,
} from 'pan-core';
import type { DxfEntity } from './dxf-parse.js';

type Vec2 = readonly [number, number];

const carried = ({ extendedData }: DxfEntity, word: string): readonly number[] | null => {
  const text = extendedData?.customStrings?.find((one) => one.startsWith(`${word} `));
  return text === undefined ? null : text.split(' ').slice(1).map(Number);
};

const normalOf = (entity: DxfEntity): readonly [number, number, number] => {
  const [x = 0, y = 0, z = 1] = carried(entity, 'normal') ?? [];
  return [x, y, z];
};

/** An entity whose plane is not the drawing's. */
export const isTilted = (entity: DxfEntity): boolean => {
  const [x, y, z] = normalOf(entity);
  return Math.hypot(x, y) > 1e-6 * Math.abs(z);
};

/**
 * Seen from behind: its own X runs to the left (DXF reference, arbitrary axis algorithm, for a normal along −Z).
 */
export const isMirrored = (entity: DxfEntity): boolean => normalOf(entity)[2] < 0;

const TURNED = scaleMap(-1, 1);

/** The curves of one entity in the drawing's plane; a text says why there are none. */
export const dxfCurve = (entity: DxfEntity): readonly Curve[] | string => {
  const own = inOwnAxes(entity);
  if (typeof own === 'string' || !isMirrored(entity) || inWorldAxes(entity)) return own;
  return own.map((curve) => moveCurve(curve, TURNED));
};

/** Lines, ellipses, splines and polylines in space stand in the drawing's own axes whatever their normal is. */
const inWorldAxes = ({ type, is3dPolyline }: DxfEntity): boolean =>
  type === 'LINE' || type === 'ELLIPSE' || type === 'SPLINE' || is3dPolyline === true;

const inOwnAxes = (entity: DxfEntity): readonly Curve[] | string => {
  const { center, radius = 0, startAngle = 0, endAngle = 0 } = entity;
  switch (entity.type) {
    case 'LINE':
      return [{ kind: 'straight', points: (entity.vertices ?? []).map(({ x, y }): Vec2 => [x, y]) }];
    case 'CIRCLE':
    case 'ARC': {
      if (center === undefined || !(radius > 0)) return 'circle without a radius';
      const at: Vec2 = [center.x, center.y];
      if (entity.type === 'CIRCLE') return [circleCurve(at, radius)];
      return [circleCurve(at, radius, startAngle, onward(startAngle, endAngle))];
    }
    case 'ELLIPSE':
      return ellipse(entity);
    case 'LWPOLYLINE':
    case 'POLYLINE':
      return polyline(entity);
    case 'SPLINE':
      return spline(entity);
    default:
      return entity.type.toLowerCase().slice(0, 20);
  }
};

/** The end of a sweep that runs counter-clockwise from `from`. */
const onward = (from: number, to: number): number => {
  const sweep = (to - from) % (2 * Math.PI);
  return from + (sweep <= 1e-12 ? sweep + 2 * Math.PI : sweep);
};

const ellipse = (entity: DxfEntity): readonly Curve[] | string => {
  const { center, majorAxisEndPoint: major, axisRatio: ratio = 0 } = entity;
  if (center === undefined || major === undefined || !(ratio > 0) || Math.hypot(major.x, major.y) === 0)
    return 'ellipse without a size';
  const side = isMirrored(entity) ? -ratio : ratio;
  const [from, to] = [entity.startAngle ?? 0, entity.endAngle ?? 2 * Math.PI];
  return [
    {
      kind: 'ellipse',
      at: [center.x, center.y],
      u: [major.x, major.y],
      v: [0 - side * major.y, side * major.x],
      from,
      to: Math.abs(to - from) >= 2 * Math.PI - 1e-9 ? from + 2 * Math.PI : onward(from, to),
    },
  ];
};

const polyline = (entity: DxfEntity): readonly Curve[] | string => {
  if (entity.is3dPolygonMesh === true || entity.isPolyfaceMesh === true) return 'mesh';
  // The frame of a curve fitted by the drawing program is not part of what is drawn.
  const corners = (entity.vertices ?? []).filter((vertex) => vertex.splineControlPoint !== true);
  const ring = entity.shape === true && corners.length > 1 ? [...corners, corners[0]!] : corners;
  if (ring.length < 2) return 'polyline of one point';
  const curves: Curve[] = [];
  let straight: Vec2[] = [];
  const finish = (): void => {
    if (straight.length > 1) curves.push({ kind: 'straight', points: straight });
    straight = [];
  };
  ring.forEach(({ x, y }, i) => {
    const before = ring[i - 1];
    const bulge = before?.bulge ?? 0;
    if (before !== undefined && bulge !== 0) {
      finish();
      curves.push(bulgeCurve([before.x, before.y], [x, y], bulge));
    }
    if (i === 0 || bulge !== 0) straight = [[x, y]];
    else straight.push([x, y]);
  });
  finish();
  return curves;
};

const spline = (entity: DxfEntity): readonly Curve[] | string => {
  const points = (entity.controlPoints ?? []).map(({ x, y }): Vec2 => [x, y]);
  if (points.length === 0) return throughFitPoints(entity);
  const curve: NurbsCurve = {
    kind: 'nurbs',
    degree: entity.degreeOfSplineCurve ?? 3,
    knots: entity.knotValues ?? [],
    points,
    weights: carried(entity, 'weights') ?? points.map(() => 1),
  };
  const fault = nurbsFault(curve);
  return fault === null ? [curve] : `spline with ${fault}`;
};

/** Drawing programs that keep only the points a spline was drawn through leave its course to the reader. */
const throughFitPoints = (entity: DxfEntity): readonly Curve[] | string => {
  const flat = carried(entity, 'fit') ?? [];
  const points = flat.flatMap((x, i): readonly Vec2[] => (i % 2 === 0 ? [[x, flat[i + 1] ?? 0]] : []));
  const tangent = (word: string): Vec2 | null => {
    const [x, y] = carried(entity, word) ?? [];
    return x === undefined || y === undefined ? null : [x, y];
  };
  const [first, last] = [points[0], points.at(-1)];
  const round = first !== undefined && last !== undefined && entity.closed === true;
  if (round && Math.hypot(first[0] - last[0], first[1] - last[1]) > 0) points.push(first);
  const [second, before] = [points[1], points.at(-2)];
  // Round a closed one the ends go the same way, along the chord over them.
  const over: Vec2 | null =
    round && second !== undefined && before !== undefined
      ? [second[0] - before[0], second[1] - before[1]]
      : null;
  const curve = splineThrough(points, { start: over ?? tangent('start'), end: over ?? tangent('end') });
  return curve === null ? 'spline without points' : [curve];
};

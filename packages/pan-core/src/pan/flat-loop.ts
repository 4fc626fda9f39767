import { flatAxes, type PlaneEquation, type PlaneTable, type Polygon } from '../geometry/index.js';
import type { Vec2 } from '../numeric/index.js';
import type { RoomFace } from './cell.js';

/** A face in its plane's flat axes, counter-clockwise whichever way the face looks. */
export const flatLoop = (table: PlaneTable, face: RoomFace): Polygon => {
  const { u, v } = flatAxes((table.planes[face.plane] as PlaneEquation).normal);
  const loop = face.loop.map((p): Vec2 => [p[u], p[v]]);
  return face.side === 1 ? loop : loop.reverse();
};

/** Area on the plane ÷ area in flat axes. */
export const flatScale = (equation: PlaneEquation): number => {
  const { u, v } = flatAxes(equation.normal);
  return 1 / Math.abs(equation.normal[(3 - u - v) as 0 | 1 | 2]);
};

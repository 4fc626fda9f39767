import { cross3, length3, subtract3, type Vec3 } from '../../numeric/index.js';
import type { OpeningShape } from './opening-head.js';

/** An opening's shape in flat arrays; points relative to the body's origin, mm. */
export interface FlowShape extends OpeningShape {
  readonly corners: Float64Array;
  readonly centre: Vec3;
  /** Reach of the corners from the centre, mm. */
  readonly reach: number;
  /** Heights of the corners along some direction; work space. */
  readonly heights: Float64Array;
  readonly area: number;
  /** Hydraulic diameter, 4·area/perimeter, mm. */
  readonly diameter: number;
}

/** The shape of flat convex pieces, each cut into a fan of triangles. */
export const shapeOf = (pieces: readonly (readonly Vec3[])[]): FlowShape => {
  const corners: number[] = [];
  const triangles: number[] = [];
  const areas: number[] = [];
  let edge = 0;
  for (const piece of pieces) {
    const first = corners.length / 3;
    for (const p of piece) corners.push(...p);
    piece.forEach((p, i) => {
      edge += length3(subtract3(piece[(i + 1) % piece.length] as Vec3, p));
    });
    for (let i = 1; i + 1 < piece.length; i++) {
      const [a, b, c] = [piece[0], piece[i], piece[i + 1]] as [Vec3, Vec3, Vec3];
      const area = length3(cross3(subtract3(b, a), subtract3(c, a))) / 2;
      if (!(area > 0)) continue;
      triangles.push(first, first + i, first + i + 1);
      areas.push(area);
    }
  }
  const area = areas.reduce((a, b) => a + b, 0);
  return finish(corners, triangles, areas, area, (4 * area) / edge);
};

/** Several shapes of one plane as one, which run as wide as the widest of them. */
export const joinShapes = (shapes: readonly FlowShape[]): FlowShape => {
  const corners: number[] = [];
  const triangles: number[] = [];
  for (const shape of shapes) {
    const first = corners.length / 3;
    triangles.push(...Array.from(shape.triangles, (k) => k + first));
    corners.push(...shape.corners);
  }
  const areas = shapes.flatMap((s) => [...s.areas]);
  const area = areas.reduce((a, b) => a + b, 0);
  return finish(corners, triangles, areas, area, Math.max(...shapes.map((s) => s.diameter)));
};

const finish = (
  corners: readonly number[],
  triangles: readonly number[],
  areas: readonly number[],
  area: number,
  diameter: number,
): FlowShape => {
  const at = (i: number): Vec3 => [
    corners[3 * i] as number,
    corners[3 * i + 1] as number,
    corners[3 * i + 2] as number,
  ];
  const centre: [number, number, number] = [0, 0, 0];
  areas.forEach((share, t) => {
    for (let k = 3 * t; k < 3 * t + 3; k++)
      at(triangles[k] as number).forEach((v, axis) => {
        centre[axis as 0 | 1 | 2] += (share * v) / (3 * area);
      });
  });
  let reach = 0;
  for (let i = 0; 3 * i < corners.length; i++) reach = Math.max(reach, length3(subtract3(at(i), centre)));
  return {
    corners: Float64Array.from(corners),
    triangles: Int32Array.from(triangles),
    areas: Float64Array.from(areas),
    heights: new Float64Array(corners.length / 3),
    values: new Float64Array(corners.length / 3),
    centre,
    reach,
    area,
    diameter,
  };
};

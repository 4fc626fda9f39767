import { cross3, dot3, subtract3, type Vec3 } from '../numeric/index.js';

/** A convex polyhedron: face loops run counter-clockwise seen from outside. */
export interface ConvexSolid {
  readonly vertices: readonly Vec3[];
  readonly faces: readonly (readonly number[])[];
}

export interface Bounds {
  readonly low: Vec3;
  readonly high: Vec3;
}

/** n·p ≤ offset inside; n is a unit vector. */
export interface HalfSpace {
  readonly normal: Vec3;
  readonly offset: number;
}

export const boundsOf = (points: readonly Vec3[]): Bounds => {
  const low: [number, number, number] = [Infinity, Infinity, Infinity];
  const high: [number, number, number] = [-Infinity, -Infinity, -Infinity];
  for (let i = 0; i < points.length; i++) {
    const p = points[i]!;
    for (let k = 0 as 0 | 1 | 2; k < 3; k++) {
      if (p[k] < low[k]) low[k] = p[k];
      if (p[k] > high[k]) high[k] = p[k];
    }
  }
  return { low, high };
};

/** Distance between two boxes along the axes; 0 when they meet. */
export const boundsGap = (a: Bounds, b: Bounds): number => {
  const x = Math.max(0, a.low[0] - b.high[0], b.low[0] - a.high[0]);
  const y = Math.max(0, a.low[1] - b.high[1], b.low[1] - a.high[1]);
  const z = Math.max(0, a.low[2] - b.high[2], b.low[2] - a.high[2]);
  return Math.sqrt(x * x + y * y + z * z);
};

/** Area vector of a loop seen from any point near it. */
export const loopNormal = (loop: readonly Vec3[]): Vec3 => {
  const o = loop[0]!;
  let sum: Vec3 = [0, 0, 0];
  for (let i = 1; i + 1 < loop.length; i++) {
    const c = cross3(subtract3(loop[i]!, o), subtract3(loop[i + 1]!, o));
    sum = [sum[0] + c[0], sum[1] + c[1], sum[2] + c[2]];
  }
  return sum;
};

/** The face planes; a face that is not quite flat gives the plane that holds all its corners. */
export const halfSpacesOf = (solid: ConvexSolid): readonly HalfSpace[] =>
  solid.faces.map((face) => {
    const loop = face.map((i) => solid.vertices[i]!);
    const area = loopNormal(loop);
    const size = Math.hypot(area[0], area[1], area[2]);
    const normal: Vec3 = [area[0] / size, area[1] / size, area[2] / size];
    return { normal, offset: Math.max(...loop.map((p) => dot3(normal, p))) };
  });

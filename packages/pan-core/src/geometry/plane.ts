import { dot3, type Vec3 } from '../numeric/index.js';

/** n·p = offset, with n of unit length and its first non-zero component positive. */
export interface PlaneEquation {
  readonly normal: Vec3;
  readonly offset: number;
}

/** Planes by number: the same equation, digit for digit, always has the same number. */
export interface PlaneTable {
  readonly planes: PlaneEquation[];
  readonly numbers: Map<string, number>;
}

/** A plane by number with the side its half-space or outward normal is on: +1 along the plane's normal. */
export interface SidedPlane {
  readonly plane: number;
  readonly side: 1 | -1;
}

export const createPlaneTable = (): PlaneTable => ({ planes: [], numbers: new Map() });

/**
 * Registers the plane through `point` with the outward direction `outward` (any length).
 * Axis-parallel planes take their offset from the point's own coordinate, so that equal stations are equal
 * numbers without a tolerance.
 */
export const planeThrough = (table: PlaneTable, outward: Vec3, point: Vec3): SidedPlane => {
  const scale = Math.hypot(outward[0], outward[1], outward[2]);
  const lead = outward[0] !== 0 ? outward[0] : outward[1] !== 0 ? outward[1] : outward[2];
  const side: 1 | -1 = lead > 0 ? 1 : -1;
  const part = (v: number): number => (v === 0 ? 0 : (side * v) / scale);
  const normal: Vec3 = [part(outward[0]), part(outward[1]), part(outward[2])];
  const offset = dot3(normal, point) + 0;
  const key = `${normal[0]},${normal[1]},${normal[2]},${offset}`;
  const known = table.numbers.get(key);
  if (known !== undefined) return { plane: known, side };
  table.planes.push({ normal, offset });
  table.numbers.set(key, table.planes.length - 1);
  return { plane: table.planes.length - 1, side };
};

export const opposite = (p: SidedPlane): SidedPlane => ({ plane: p.plane, side: p.side === 1 ? -1 : 1 });

/** Two axes to drop a plane's points into 2-D, and the sign that keeps counter-clockwise as seen along +normal. */
export const flatAxes = (normal: Vec3): { readonly u: 0 | 1 | 2; readonly v: 0 | 1 | 2 } => {
  const [x, y, z] = [Math.abs(normal[0]), Math.abs(normal[1]), Math.abs(normal[2])];
  if (z >= x && z >= y) return normal[2] > 0 ? { u: 0, v: 1 } : { u: 1, v: 0 };
  if (y >= x) return normal[1] > 0 ? { u: 2, v: 0 } : { u: 0, v: 2 };
  return normal[0] > 0 ? { u: 1, v: 2 } : { u: 2, v: 1 };
};

/** Lifts a flattened point back onto its plane by solving for the dropped coordinate. */
export const liftPoint = (plane: PlaneEquation, flat: readonly [number, number]): Vec3 => {
  const { u, v } = flatAxes(plane.normal);
  const w = (3 - u - v) as 0 | 1 | 2;
  const out: [number, number, number] = [0, 0, 0];
  out[u] = flat[0];
  out[v] = flat[1];
  const { normal, offset } = plane;
  out[w] = (offset - normal[u] * flat[0] - normal[v] * flat[1]) / normal[w];
  return out;
};

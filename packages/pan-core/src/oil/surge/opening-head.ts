import { power } from '../../numeric/index.js';
/** An opening as triangles in flat arrays: three corner numbers and the area (mm²) of each. */
export interface OpeningShape {
  readonly triangles: Int32Array;
  readonly areas: Float64Array;
  /** One for each corner; work space. */
  readonly values: Float64Array;
}

/** A triangle whose corners lie this close in height, as a share of the head over it, is taken as level. */
const LEVEL_SHARE = 1e-3;

/**
 * ∫ √head dA over an opening, mm^2.5: oil stands at `up` on one side and at `down`, lower, on the other.
 *
 * Above `down` the oil falls freely and the head at height z is up − z, as over a weir; below it the head is the
 * difference Δ of the levels, taken as Δ/(Δ² + δ²)^¼ so that the flow turns linear and not infinitely steep where
 * the levels meet. Exact for each triangle: the integral of f(height) is 2·area times the second divided
 * difference, at the three corner heights, of a function whose second derivative is f (Hermite–Genocchi).
 *
 * @param heights of the opening's corners along effective gravity, mm
 */
export const headIntegral = (
  shape: OpeningShape,
  heights: Float64Array,
  up: number,
  down: number,
  smooth: number,
): number => {
  const { triangles, areas, values } = shape;
  const gap = up - down;
  if (!(gap > 0)) return 0;
  const drowned = gap / Math.sqrt(Math.sqrt(gap * gap + smooth * smooth));
  const root = Math.sqrt(gap);
  const base = (4 / 15) * gap * gap * root;
  const rise = (2 / 3) * gap * root;
  let highest = Number.NEGATIVE_INFINITY;
  // The function whose second derivative is the root of the head: zero from `up` on.
  for (let i = 0; i < heights.length; i++) {
    const z = heights[i] as number;
    if (z > highest) highest = z;
    const d = up - z;
    const below = down - z;
    values[i] =
      d <= 0
        ? 0
        : below <= 0
          ? (4 / 15) * d * d * Math.sqrt(d)
          : base + below * (rise + (below * drowned) / 2);
  }
  let sum = 0;
  if (highest <= down) {
    for (let t = 0; t < areas.length; t++) sum += areas[t] as number;
    return sum * drowned;
  }
  for (let t = 0, k = 0; t < areas.length; t++, k += 3) {
    let a = triangles[k] as number;
    let b = triangles[k + 1] as number;
    let c = triangles[k + 2] as number;
    let swap = 0;
    if ((heights[a] as number) > (heights[b] as number)) {
      swap = a;
      a = b;
      b = swap;
    }
    if ((heights[b] as number) > (heights[c] as number)) {
      swap = b;
      b = c;
      c = swap;
    }
    if ((heights[a] as number) > (heights[b] as number)) {
      swap = a;
      a = b;
      b = swap;
    }
    const z1 = heights[a] as number;
    const z2 = heights[b] as number;
    const z3 = heights[c] as number;
    if (z1 >= up) continue;
    const area = areas[t] as number;
    if (z3 <= down) {
      sum += area * drowned;
    } else if (z3 - z1 < LEVEL_SHARE * (up - z1)) {
      sum +=
        (area / 3) *
        (rootAt((z1 + z2) / 2, up, down, drowned) +
          rootAt((z2 + z3) / 2, up, down, drowned) +
          rootAt((z1 + z3) / 2, up, down, drowned));
    } else {
      const close = 1e-9 * (z3 - z1);
      const [f1, f2, f3] = [values[a] as number, values[b] as number, values[c] as number];
      const lower = z2 - z1 > close ? (f2 - f1) / (z2 - z1) : slopeAt(z1, up, down, rise, drowned);
      const upper = z3 - z2 > close ? (f3 - f2) / (z3 - z2) : slopeAt(z3, up, down, rise, drowned);
      sum += (2 * area * (upper - lower)) / (z3 - z1);
    }
  }
  return sum;
};

/** Root of the head at height z. */
const rootAt = (z: number, up: number, down: number, drowned: number): number =>
  z >= up ? 0 : z < down ? drowned : Math.sqrt(up - z);

/** The first derivative of the function whose second is the root of the head. */
const slopeAt = (z: number, up: number, down: number, rise: number, drowned: number): number => {
  if (z >= up) return 0;
  if (z >= down) return (-2 / 3) * power(up - z, 1.5);
  return -rise - drowned * (down - z);
};

/** Area of the opening below height h, mm². */
export const areaBelow = (shape: OpeningShape, heights: Float64Array, h: number): number => {
  const { triangles, areas } = shape;
  let sum = 0;
  for (let t = 0, k = 0; t < areas.length; t++, k += 3) {
    let z1 = heights[triangles[k] as number] as number;
    let z2 = heights[triangles[k + 1] as number] as number;
    let z3 = heights[triangles[k + 2] as number] as number;
    if (z1 > z2) [z1, z2] = [z2, z1];
    if (z2 > z3) [z2, z3] = [z3, z2];
    if (z1 > z2) [z1, z2] = [z2, z1];
    const area = areas[t] as number;
    if (h >= z3) sum += area;
    else if (h > z1) {
      sum +=
        h <= z2
          ? (area * (h - z1) ** 2) / ((z2 - z1) * (z3 - z1))
          : area * (1 - (z3 - h) ** 2 / ((z3 - z1) * (z3 - z2)));
    }
  }
  return sum;
};

import {
  choleskyFactor,
  choleskyInverse,
  choleskySolve,
  type Symmetric,
  type Vec2,
} from '../numeric/index.js';

/** A distance measured between two holes, counted from 0. */
export interface HoleDistance {
  readonly holes: readonly [number, number];
  readonly length: number;
}

/** Two holes that hold the others in place: the first stands at 0, the second on the x axis ahead of it. */
export type HoleDatum = readonly [first: number, second: number];

const ROUNDS = 200;
/** Steps shorter than this change nothing that anybody measures, mm. */
const CLOSE = 1e-9;

/** Distances that leave a hole free; carries nothing else. */
export const freeHoles = (count: number, distances: readonly HoleDistance[]): readonly number[] => {
  const met = new Array<number>(count).fill(0);
  for (const { holes } of distances) for (const hole of holes) met[hole] = (met[hole] as number) + 1;
  return met.flatMap((times, hole) => (times < 2 ? [hole] : []));
};

/** Place of each hole's x and y among the unknowns; −1 where the datum holds it. */
const unknownsOf = (count: number, [first, second]: HoleDatum): Int32Array => {
  const places = new Int32Array(2 * count).fill(-1);
  let next = 0;
  for (let hole = 0; hole < count; hole++) {
    if (hole === first) continue;
    places[2 * hole] = next++;
    if (hole !== second) places[2 * hole + 1] = next++;
  }
  return places;
};

/** The derivative of one distance by its holes' x and y: four values, each with its place among the unknowns. */
interface Row {
  readonly places: Int32Array;
  readonly values: Float64Array;
}

const emptyRow = (): Row => ({ places: new Int32Array(4), values: new Float64Array(4) });

/** Writes a distance's row over the last one, since a fit asks for very many; gives the laid-out distance. */
const fillRow = (
  row: Row,
  points: readonly Vec2[],
  [a, b]: readonly [number, number],
  places: Int32Array,
): number => {
  const [p, q] = [points[a] as Vec2, points[b] as Vec2];
  const length = Math.max(Math.hypot(q[0] - p[0], q[1] - p[1]), 1e-9);
  row.values[2] = (q[0] - p[0]) / length;
  row.values[3] = (q[1] - p[1]) / length;
  row.values[0] = -(row.values[2] as number);
  row.values[1] = -(row.values[3] as number);
  row.places[0] = places[2 * a] as number;
  row.places[1] = places[2 * a + 1] as number;
  row.places[2] = places[2 * b] as number;
  row.places[3] = places[2 * b + 1] as number;
  return length;
};

/** Sum of squared differences between measured and laid-out distances, mm². */
export const networkError = (points: readonly Vec2[], distances: readonly HoleDistance[]): number =>
  distances.reduce((sum, { holes: [a, b], length }) => {
    const [p, q] = [points[a] as Vec2, points[b] as Vec2];
    return sum + (length - Math.hypot(q[0] - p[0], q[1] - p[1])) ** 2;
  }, 0);

/** Turned and shifted so that the datum holds; lengths stay. */
export const ontoDatum = (points: readonly Vec2[], [first, second]: HoleDatum): readonly Vec2[] => {
  const [p, q] = [points[first] as Vec2, points[second] as Vec2];
  const turn = Math.atan2(q[1] - p[1], q[0] - p[0]);
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  return points.map(([x, y], hole): Vec2 => {
    const [dx, dy] = [x - p[0], y - p[1]];
    return hole === second ? [Math.hypot(dx, dy), 0] : [c * dx + s * dy, c * dy - s * dx];
  });
};

/** Adds a row's share to the normal matrix. */
const addRow = (matrix: Symmetric, size: number, { places, values }: Row): void => {
  for (let k = 0; k < 4; k++) {
    const i = places[k] as number;
    if (i < 0) continue;
    for (let l = 0; l < 4; l++) {
      const j = places[l] as number;
      if (j < 0) continue;
      const at = i * size + j;
      matrix[at] = (matrix[at] as number) + (values[k] as number) * (values[l] as number);
    }
  }
};

/**
 * The layout nearest the measured distances in the sense of least squares, from a first layout.
 * Levenberg–Marquardt: D. W. Marquardt, J. SIAM 11 (1963) 431–441, damping by the diagonal (from memory).
 */
export const refineNetwork = (
  start: readonly Vec2[],
  distances: readonly HoleDistance[],
  datum: HoleDatum,
  close = CLOSE,
): readonly Vec2[] => {
  const count = start.length;
  const places = unknownsOf(count, datum);
  const size = 2 * count - 3;
  const row = emptyRow();
  let points = ontoDatum(start, datum);
  let error = networkError(points, distances);
  let damping = 1e-3;
  for (let round = 0; round < ROUNDS && damping < 1e12; round++) {
    const matrix = new Float64Array(size * size);
    const right = new Float64Array(size);
    for (const { holes, length } of distances) {
      const off = length - fillRow(row, points, holes, places);
      addRow(matrix, size, row);
      for (let k = 0; k < 4; k++) {
        const i = row.places[k] as number;
        if (i >= 0) right[i] = (right[i] as number) + (row.values[k] as number) * off;
      }
    }
    for (let i = 0; i < size; i++) {
      const own = matrix[i * size + i] as number;
      matrix[i * size + i] = own + damping * Math.max(own, 1e-3);
    }
    const factor = choleskyFactor(matrix, size, 0);
    if (factor === null) {
      damping *= 10;
      continue;
    }
    const step = choleskySolve(factor, right);
    const moved = points.map(([x, y], hole): Vec2 => {
      const [i, j] = [places[2 * hole] as number, places[2 * hole + 1] as number];
      return [x + (i < 0 ? 0 : (step[i] as number)), y + (j < 0 ? 0 : (step[j] as number))];
    });
    const after = networkError(moved, distances);
    const longest = step.reduce((most, one) => Math.max(most, Math.abs(one)), 0);
    if (after > error) {
      if (longest < close) break;
      damping *= 4;
      continue;
    }
    points = moved;
    error = after;
    damping = Math.max(damping / 10, 1e-12);
    if (longest < close) break;
  }
  return points;
};

/** How well a set of distances holds a layout, for distances of ± 1. */
export interface NetworkStrength {
  /** 4 variances and covariances of x and y per hole, [xx, xy, yy]; 0 where the datum holds it. */
  readonly variance: readonly (readonly [xx: number, xy: number, yy: number])[];
  /**
   * Share of a slip in each distance that shows in its own residual, 0 to 1.
   * W. Baarda: A testing procedure for use in geodetic networks (1968), redundancy numbers (from memory).
   */
  readonly redundancy: readonly number[];
  /** Variance that the laid-out distance between any two holes has. */
  readonly spread: (pair: readonly [number, number]) => number;
}

/** null when the distances leave something free to move. */
export const networkStrength = (
  points: readonly Vec2[],
  pairs: readonly (readonly [number, number])[],
  datum: HoleDatum,
): NetworkStrength | null => {
  const count = points.length;
  const places = unknownsOf(count, datum);
  const size = 2 * count - 3;
  const row = emptyRow();
  const matrix = new Float64Array(size * size);
  for (const pair of pairs) {
    fillRow(row, points, pair, places);
    addRow(matrix, size, row);
  }
  const factor = choleskyFactor(matrix, size, 1e-9);
  if (factor === null) return null;
  const inverse = choleskyInverse(factor, size);
  const at = (i: number, j: number): number => (i < 0 || j < 0 ? 0 : (inverse[i * size + j] as number));
  const spread = (pair: readonly [number, number]): number => {
    fillRow(row, points, pair, places);
    let sum = 0;
    for (let k = 0; k < 4; k++) {
      for (let l = 0; l < 4; l++) {
        const share = at(row.places[k] as number, row.places[l] as number);
        sum += (row.values[k] as number) * (row.values[l] as number) * share;
      }
    }
    return sum;
  };
  return {
    variance: points.map((_, hole) => {
      const [i, j] = [places[2 * hole] as number, places[2 * hole + 1] as number];
      return [at(i, i), at(i, j), at(j, j)] as const;
    }),
    redundancy: pairs.map((pair) => 1 - spread(pair)),
    spread,
  };
};

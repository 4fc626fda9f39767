/** The largest value of the least of some functions over a tetrahedron, as far as their corner values tell. */
export interface SimplexBound {
  readonly value: number;
  /** Shares of the four corners where it is reached. */
  readonly weights: readonly [number, number, number, number];
  /** Share of each function in the mean that is nowhere greater than `value`; none for one that does not bind. */
  readonly binding: readonly { readonly index: number; readonly share: number }[];
}

const MOST_PIVOTS = 120;
const TINY = 1e-12;

/**
 * Maximises min_k f_k over a tetrahedron on which every cut g_c ≤ 0, with f_k and g_c taken as linear between
 * their values at the four corners. For convex f_k that is an upper bound; where they are linear it is exact.
 * null: no point of the tetrahedron is allowed by the cuts. Values f must be ≥ 0.
 *
 * A matrix game with four rows, solved by the simplex method in its usual form: maximise Σx over
 * Σ_k f_k(corner i)·x_k − Σ_c g_c(corner i)·y_c ≤ 1 (Dantzig, Linear Programming and Extensions, chapter 13,
 * from memory). The dual gives the corner shares.
 */
export const simplexBound = (
  values: readonly (readonly number[])[],
  cuts: readonly (readonly number[])[],
): SimplexBound | null => {
  const functions = values.length;
  const columns = functions + cuts.length + 4;
  const right = columns;
  // A millimetre is added to every value so that the game's worth is positive, and taken off again.
  const rows = [0, 1, 2, 3].map((i) => {
    const row = new Float64Array(columns + 1);
    for (let k = 0; k < functions; k++) row[k] = values[k]![i]! + 1;
    for (let c = 0; c < cuts.length; c++) row[functions + c] = -cuts[c]![i]!;
    row[functions + cuts.length + i] = 1;
    row[right] = 1;
    return row;
  });
  const gain = new Float64Array(columns + 1);
  for (let k = 0; k < functions; k++) gain[k] = 1;
  const basis = [columns - 4, columns - 3, columns - 2, columns - 1];
  for (let pivot = 0; pivot < MOST_PIVOTS; pivot++) {
    const column = entering(gain, columns, pivot > MOST_PIVOTS / 2);
    if (column < 0) return solved(rows, basis, gain, functions);
    const leaving = leavingRow(rows, column, right);
    if (leaving < 0) return null;
    pivotOn(rows, gain, leaving, column);
    basis[leaving] = column;
  }
  return loose(values);
};

/** The best column, or past many pivots the first one (Bland's rule), so that ties cannot go round. */
const entering = (gain: Float64Array, columns: number, first: boolean): number => {
  let best = -1;
  let most = TINY;
  for (let j = 0; j < columns; j++) {
    if (gain[j]! > most) {
      if (first) return j;
      most = gain[j]!;
      best = j;
    }
  }
  return best;
};

const leavingRow = (rows: readonly Float64Array[], column: number, right: number): number => {
  let best = -1;
  let least = Number.POSITIVE_INFINITY;
  rows.forEach((row, i) => {
    if (row[column]! <= TINY) return;
    const ratio = row[right]! / row[column]!;
    if (ratio < least) {
      least = ratio;
      best = i;
    }
  });
  return best;
};

const pivotOn = (
  rows: readonly Float64Array[],
  gain: Float64Array,
  leaving: number,
  column: number,
): void => {
  const pivotRow = rows[leaving]!;
  const by = pivotRow[column]!;
  for (let j = 0; j < pivotRow.length; j++) pivotRow[j] = pivotRow[j]! / by;
  for (const row of [...rows, gain]) {
    const factor = row[column]!;
    if (row === pivotRow || factor === 0) continue;
    for (let j = 0; j < row.length; j++) row[j] = row[j]! - factor * pivotRow[j]!;
  }
};

const solved = (
  rows: readonly Float64Array[],
  basis: readonly number[],
  gain: Float64Array,
  functions: number,
): SimplexBound => {
  const columns = gain.length - 1;
  // The last entry holds minus the sum of x; the slack entries hold minus the dual prices.
  const sum = -gain[columns]!;
  const price = (i: number): number => Math.max(0, -gain[columns - 4 + i]!) / sum;
  const total = price(0) + price(1) + price(2) + price(3);
  return {
    value: 1 / sum - 1,
    weights: [price(0) / total, price(1) / total, price(2) / total, price(3) / total],
    binding: basis.flatMap((index, i) =>
      index < functions ? [{ index, share: rows[i]![columns]! / sum }] : [],
    ),
  };
};

const loose = (values: readonly (readonly number[])[]): SimplexBound => {
  const tops = values.map((row) => Math.max(...row));
  const value = Math.min(...tops);
  return { value, weights: [0.25, 0.25, 0.25, 0.25], binding: [{ index: tops.indexOf(value), share: 1 }] };
};

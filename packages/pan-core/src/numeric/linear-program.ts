/** Least cost·x with rows·x ≤ bounds and 0 ≤ x; every row and `cost` as long as x. */
export interface LinearProgram {
  readonly cost: readonly number[];
  readonly rows: readonly (readonly number[])[];
  readonly bounds: readonly number[];
}

export interface LinearAnswer {
  readonly x: readonly number[];
  /** By how much the rows still miss, the same for each; 0 where all hold. */
  readonly short: number;
  /** What one unit more of each bound is worth: the fall of the cost, never negative. */
  readonly worth: readonly number[];
}

const TINY = 1e-11;
const MOST_TURNS = 2000;

/**
 * Two-phase simplex on a dense tableau with Bland's rule, which cannot cycle (Bland, "New finite pivoting
 * rules for the simplex method", 1977). Rows that contradict each other are let out by one shared amount, as
 * small as can be, so there is always an answer.
 */
export const solveLinear = ({ cost, rows, bounds }: LinearProgram): LinearAnswer => {
  const [m, n] = [rows.length, cost.length];
  const width = n + m + 2;
  const shared = n + m;
  const table = rows.map((row, i) => {
    const line = new Float64Array(width);
    line.set(row);
    line[n + i] = 1;
    line[shared] = -1;
    line[width - 1] = bounds[i] as number;
    return line;
  });
  const basis = rows.map((_, i) => n + i);
  const worst = bounds.reduce((at, bound, i) => (bound < (bounds[at] as number) ? i : at), 0);
  if (m > 0 && (bounds[worst] as number) < 0) {
    const first = new Float64Array(width);
    first[shared] = 1;
    pivot(table, first, basis, worst, shared);
    turn(table, first, basis, width - 1);
  }
  const at = basis.indexOf(shared);
  const short = at < 0 ? 0 : Math.max(0, (table[at] as Float64Array)[width - 1] as number);
  if (at >= 0 && short <= TINY) leaveOut(table, basis, at, shared);
  const second = new Float64Array(width);
  second.set(cost);
  basis.forEach((column, i) => {
    const share = second[column] as number;
    if (share !== 0) addRow(second, table[i] as Float64Array, -share);
  });
  // The shared amount stays as it is: with it in play the second phase would buy cost with a miss.
  if (short <= TINY) turn(table, second, basis, shared);
  const x = new Array<number>(n).fill(0);
  basis.forEach((column, i) => {
    if (column < n) x[column] = (table[i] as Float64Array)[width - 1] as number;
  });
  return { x, short, worth: rows.map((_, i) => Math.max(0, second[n + i] as number)) };
};

/** Takes a shared amount of nothing out of the basis, so that the second phase cannot raise it again. */
const leaveOut = (table: Float64Array[], basis: number[], at: number, shared: number): void => {
  const row = table[at] as Float64Array;
  for (let column = 0; column < shared; column++) {
    if (Math.abs(row[column] as number) <= TINY) continue;
    pivot(table, new Float64Array(row.length), basis, at, column);
    return;
  }
};

/** Pivots until no column before `columns` lowers the cost. */
const turn = (table: Float64Array[], cost: Float64Array, basis: number[], columns: number): void => {
  for (let turns = 0; turns < MOST_TURNS; turns++) {
    let enter = 0;
    while (enter < columns && (cost[enter] as number) >= -TINY) enter++;
    if (enter === columns) return;
    const leave = leaving(table, basis, enter);
    if (leave < 0) return;
    pivot(table, cost, basis, leave, enter);
  }
};

const leaving = (table: readonly Float64Array[], basis: readonly number[], enter: number): number => {
  let leave = -1;
  let least = Number.POSITIVE_INFINITY;
  table.forEach((row, i) => {
    const slope = row[enter] as number;
    if (slope <= TINY) return;
    const ratio = (row[row.length - 1] as number) / slope;
    const tied = Math.abs(ratio - least) <= TINY;
    if (ratio < least - TINY || (tied && (basis[i] as number) < (basis[leave] as number))) {
      leave = i;
      least = Math.min(least, ratio);
    }
  });
  return leave;
};

const pivot = (
  table: Float64Array[],
  cost: Float64Array,
  basis: number[],
  leave: number,
  enter: number,
): void => {
  const row = table[leave] as Float64Array;
  const scale = 1 / (row[enter] as number);
  for (let k = 0; k < row.length; k++) row[k] = (row[k] as number) * scale;
  for (const other of [...table, cost]) {
    const share = other[enter] as number;
    if (other !== row && share !== 0) addRow(other, row, -share);
  }
  basis[leave] = enter;
};

const addRow = (to: Float64Array, row: Float64Array, share: number): void => {
  for (let k = 0; k < to.length; k++) to[k] = (to[k] as number) + share * (row[k] as number);
};

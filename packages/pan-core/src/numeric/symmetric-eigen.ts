export interface EigenPair {
  readonly value: number;
  readonly vector: readonly number[];
}

const MOST_SWEEPS = 60;

/**
 * Eigenvalues and unit eigenvectors of a small symmetric matrix, the largest value first: Jacobi's rotations
 * (Golub and Van Loan, Matrix Computations, 8.5, from memory). Nothing to go wrong on repeated values.
 */
export const symmetricEigen = (matrix: readonly (readonly number[])[]): readonly EigenPair[] => {
  const n = matrix.length;
  const a = matrix.map((row) => [...row]);
  const v = matrix.map((_, i) => matrix.map((__, j) => (i === j ? 1 : 0)));
  for (let sweep = 0; sweep < MOST_SWEEPS; sweep++) {
    let off = 0;
    for (let p = 0; p < n; p++) for (let q = p + 1; q < n; q++) off += Math.abs(a[p]![q]!);
    if (off === 0) break;
    for (let p = 0; p < n; p++)
      for (let q = p + 1; q < n; q++) {
        if (a[p]![q] === 0) continue;
        const theta = (a[q]![q]! - a[p]![p]!) / (2 * a[p]![q]!);
        const t = (theta < 0 ? -1 : 1) / (Math.abs(theta) + Math.hypot(theta, 1));
        const c = 1 / Math.hypot(t, 1);
        turn(a, v, p, q, c, t * c);
      }
  }
  return a
    .map((row, i) => ({ value: row[i]!, vector: v.map((r) => r[i]!) }))
    .sort((one, other) => other.value - one.value);
};

const turn = (a: number[][], v: number[][], p: number, q: number, c: number, s: number): void => {
  for (const row of [...a, ...v]) {
    const [x, y] = [row[p]!, row[q]!];
    row[p] = c * x - s * y;
    row[q] = s * x + c * y;
  }
  const [rowP, rowQ] = [a[p]!, a[q]!];
  for (let k = 0; k < rowP.length; k++) {
    const [x, y] = [rowP[k]!, rowQ[k]!];
    rowP[k] = c * x - s * y;
    rowQ[k] = s * x + c * y;
  }
  a[p]![q] = 0;
  a[q]![p] = 0;
};

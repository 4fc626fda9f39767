/** A symmetric matrix as rows end to end, n × n. */
export type Symmetric = Float64Array;

/**
 * The lower factor L of a symmetric positive definite matrix, A = L·Lᵀ (Cholesky); null when a pivot is not above
 * `least` times its own diagonal, so that a singular matrix is told from a small one.
 */
export const choleskyFactor = (matrix: Symmetric, n: number, least = 1e-12): Symmetric | null => {
  const factor = new Float64Array(n * n);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = matrix[i * n + j] as number;
      for (let k = 0; k < j; k++) sum -= (factor[i * n + k] as number) * (factor[j * n + k] as number);
      if (i !== j) factor[i * n + j] = sum / (factor[j * n + j] as number);
      else if (sum > least * Math.abs(matrix[i * n + i] as number) && sum > 0)
        factor[i * n + i] = Math.sqrt(sum);
      else return null;
    }
  }
  return factor;
};

/** x of A·x = b from the factor of A. */
export const choleskySolve = (factor: Symmetric, right: Float64Array): Float64Array => {
  const n = right.length;
  const x = Float64Array.from(right);
  for (let i = 0; i < n; i++) {
    let sum = x[i] as number;
    for (let k = 0; k < i; k++) sum -= (factor[i * n + k] as number) * (x[k] as number);
    x[i] = sum / (factor[i * n + i] as number);
  }
  for (let i = n - 1; i >= 0; i--) {
    let sum = x[i] as number;
    for (let k = i + 1; k < n; k++) sum -= (factor[k * n + i] as number) * (x[k] as number);
    x[i] = sum / (factor[i * n + i] as number);
  }
  return x;
};

/** The inverse from the factor, column by column. */
export const choleskyInverse = (factor: Symmetric, n: number): Symmetric => {
  const inverse = new Float64Array(n * n);
  for (let j = 0; j < n; j++) {
    const unit = new Float64Array(n);
    unit[j] = 1;
    inverse.set(choleskySolve(factor, unit), j * n);
  }
  return inverse;
};

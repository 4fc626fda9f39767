import { findRoot } from './find-root.js';

/**
 * Share of a standard normal variable above x, for x ≥ 0.
 * Abramowitz and Stegun, Handbook of Mathematical Functions (1964), 26.2.14: the continued fraction of Mills' ratio,
 * run backwards; beyond 1.5 forty terms hold 1e-10, below it the series 26.2.10 does.
 */
export const normalTail = (x: number): number => {
  const density = Math.exp((-x * x) / 2) / Math.sqrt(2 * Math.PI);
  if (x < 1.5) {
    let [term, sum] = [x, x];
    for (let k = 1; k < 60; k++) {
      term *= (-x * x) / (2 * k);
      sum += term / (2 * k + 1);
    }
    return 0.5 - sum / Math.sqrt(2 * Math.PI);
  }
  let ratio = x;
  for (let k = 60; k >= 1; k--) ratio = x + k / ratio;
  return density / ratio;
};

/** x that a standard normal variable passes with the given chance, 0 < chance ≤ 0.5. */
export const normalAbove = (chance: number): number =>
  findRoot((x) => Math.log(normalTail(x) / chance), 0, 12, 1e-12);

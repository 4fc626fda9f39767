const MOST_ROUNDS = 100;

/**
 * A root of f between a and b, where f has opposite signs or is zero, to within `close`; NaN where the signs
 * are alike. Inverse quadratic and secant steps kept safe by halving.
 * R. P. Brent: Algorithms for Minimization without Derivatives (1973), chapter 4 (from memory).
 */
export const findRoot = (f: (x: number) => number, a: number, b: number, close: number): number => {
  let [x0, x1] = [a, b];
  let [f0, f1] = [f(x0), f(x1)];
  if (f0 === 0) return x0;
  if (f1 === 0) return x1;
  if (!(f0 * f1 < 0)) return Number.NaN;
  let [x2, f2] = [x0, f0];
  let step = x1 - x0;
  let before = step;
  for (let round = 0; round < MOST_ROUNDS; round++) {
    if (f1 > 0 === f2 > 0) {
      [x2, f2] = [x0, f0];
      step = x1 - x0;
      before = step;
    }
    if (Math.abs(f2) < Math.abs(f1)) {
      [x0, x1, x2] = [x1, x2, x1];
      [f0, f1, f2] = [f1, f2, f1];
    }
    const least = 2 * Number.EPSILON * Math.abs(x1) + close / 2;
    const half = (x2 - x1) / 2;
    if (Math.abs(half) <= least || f1 === 0) return x1;
    const tried = Math.abs(before) >= least && Math.abs(f0) > Math.abs(f1);
    const leap = tried ? leapFrom(x0, x1, x2, f0, f1, f2) : Number.NaN;
    if (
      tried &&
      2 * Math.abs(leap) < Math.min(3 * Math.abs(half) - least, Math.abs(before)) &&
      leap * half > 0
    ) {
      before = step;
      step = leap;
    } else {
      step = half;
      before = half;
    }
    [x0, f0] = [x1, f1];
    x1 += Math.abs(step) > least ? step : half > 0 ? least : -least;
    f1 = f(x1);
  }
  return x1;
};

/** The secant step from x1, or the inverse quadratic one where there are three different points. */
const leapFrom = (x0: number, x1: number, x2: number, f0: number, f1: number, f2: number): number => {
  const s = f1 / f0;
  if (x0 === x2) return ((x2 - x1) * s) / (s - 1);
  const [q, r] = [f0 / f2, f1 / f2];
  return (s * ((x2 - x1) * q * (q - r) - (x1 - x0) * (r - 1))) / -((q - 1) * (r - 1) * (s - 1));
};

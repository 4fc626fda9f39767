/**
 * A power that comes out the same on every engine, where Math.pow and ** differ in their last bits: whole exponents by
 * multiplying, others by exp and log, for bases above 0. Squares may stay `x ** 2`, which is x · x everywhere.
 */
export const power = (base: number, exponent: number): number => {
  if (!Number.isInteger(exponent) || Math.abs(exponent) > 64) return Math.exp(exponent * Math.log(base));
  let product = 1;
  for (let i = 0; i < Math.abs(exponent); i++) product *= base;
  return exponent < 0 ? 1 / product : product;
};

/** 10 to a whole power, as near as a number can be. */
export const tenTo = (exponent: number): number => Number(`1e${exponent}`);

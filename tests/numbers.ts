import { expect } from 'vitest';

/**
 * Fails unless `actual` lies within `tolerance` (absolute, in the value's own unit, ends included) of `expected`.
 * A relative tolerance is written where it is used: `1e-12 * Math.abs(expected)`.
 *
 * @param what Names the quantity in the failure message.
 */
export const expectWithin = (actual: number, expected: number, tolerance: number, what = 'value'): void => {
  // Not written as `off > tolerance`, which a NaN would slip through.
  const close = Math.abs(actual - expected) <= tolerance;
  const told = `${what}: ${actual} is ${Math.abs(actual - expected)} from ${expected}, allowed ${tolerance}`;
  expect(close, told).toBe(true);
};

import { expect } from 'vitest';

/**
 * Fails unless `actual` lies within `tolerance` (absolute, in the value's own unit, ends included) of `expected`.
 * Nothing at all (undefined or null) is never within. A relative tolerance is written where it is used: `1e-12 * Math.abs(expected)`.
 *
 * @param what Names the quantity in the failure message.
 */
export const expectWithin = (
  actual: number | null | undefined,
  expected: number,
  tolerance: number,
  what = 'value',
): void => {
  const off = Math.abs((actual ?? Number.NaN) - expected);
  // Not written as `off > tolerance`, which a NaN would slip through.
  const close = off <= tolerance;
  const told = `${what}: ${actual} is ${off} from ${expected}, allowed ${tolerance}`;
  expect(close, told).toBe(true);
};

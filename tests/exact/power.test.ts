import { power, tenTo } from 'pan-core/numeric/index.js';
import { expect, test } from 'vitest';
import { expectWithin } from '../numbers.js';

test('whole exponents multiply, exactly where the product is exact', () => {
  expect([power(2, 10), power(-3, 3), power(5, 0), power(4, -1), power(10, 15)]).toEqual([
    1024, -27, 1, 0.25, 1e15,
  ]);
});

test('other exponents are within a few last bits of the engine’s own', () => {
  for (let i = 1; i < 400; i++)
    for (const exponent of [1.5, 1.11, 0.286, -0.2, 0.14, 2.7]) {
      const base = i / 7;
      // exp and log are each within a last bit; the exponent carries log's.
      const allowed = 2e-16 * (4 + Math.abs(exponent * Math.log(base)) * 2) * base ** exponent;
      expectWithin(power(base, exponent), base ** exponent, allowed, `${base} to ${exponent}`);
    }
  expect(power(0, 1.5)).toBe(0);
});

test('ten to a whole power is the number that is written so', () => {
  for (let k = -30; k <= 30; k++) expect(tenTo(k)).toBe(Number(`1e${k}`));
  expect([tenTo(-3), tenTo(0), tenTo(2)]).toEqual([0.001, 1, 100]);
});

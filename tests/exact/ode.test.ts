import { createDormandPrince, findRoot, type Slope, stepFactor } from 'pan-core/numeric/index.js';
import { describe, expect, it } from 'vitest';
import { expectWithin } from '../numbers.js';

/** A pendulum's small swing, y″ = −y, from 1 at rest; and y′ = t·y beside it. */
const slope: Slope = (t, y, out) => {
  out[0] = y[1] as number;
  out[1] = -(y[0] as number);
  out[2] = t * (y[2] as number);
};
const exact = (t: number): readonly number[] => [Math.cos(t), -Math.sin(t), Math.exp((t * t) / 2)];

/** The largest errors at the end, and halfway through every step, of n equal steps from 0 to 2. */
const errors = (n: number): { readonly end: number; readonly inside: number; readonly told: number } => {
  const method = createDormandPrince(3);
  const y = Float64Array.from([1, 0, 1]);
  const between = new Float64Array(3);
  const h = 2 / n;
  let [inside, told] = [0, 0];
  slope(0, y, method.first);
  for (let i = 0; i < n; i++) {
    method.attempt(slope, i * h, y, h);
    method.between(0.5, between);
    const middle = exact((i + 0.5) * h);
    for (const k of [0, 1, 2])
      inside = Math.max(inside, Math.abs((between[k] as number) - (middle[k] as number)));
    for (const e of method.error) told = Math.max(told, Math.abs(e));
    y.set(method.end);
    method.accept();
  }
  const end = Math.max(...exact(2).map((e, k) => Math.abs(e - (y[k] as number))));
  return { end, inside, told };
};

describe('Dormand–Prince', () => {
  it('is of fifth order at the ends of steps and of fourth within them', () => {
    const [coarse, fine] = [errors(20), errors(40)];
    expectWithin(Math.log2(coarse.end / fine.end), 5, 0.25, 'order');
    // Local error of a fourth-order interpolant goes as h⁵.
    expectWithin(Math.log2(coarse.inside / fine.inside), 5, 0.4, 'order inside');
    expectWithin(Math.log2(coarse.told / fine.told), 5, 0.4, 'order of the error told');
  });
  it('meets both ends of a step with its dense output, digit for digit to rounding', () => {
    const method = createDormandPrince(3);
    const y = Float64Array.from([1, 0, 1]);
    const out = new Float64Array(3);
    slope(0, y, method.first);
    method.attempt(slope, 0, y, 0.3);
    method.between(0, out);
    for (const k of [0, 1, 2]) expectWithin(out[k], y[k] as number, 1e-15);
    method.between(1, out);
    for (const k of [0, 1, 2]) expectWithin(out[k], method.end[k] as number, 1e-15);
  });
  it('keeps the last slope as the first of the next step', () => {
    const method = createDormandPrince(3);
    const y = Float64Array.from([1, 0, 1]);
    slope(0, y, method.first);
    method.attempt(slope, 0, y, 0.3);
    method.accept();
    const again = new Float64Array(3);
    slope(0.3, method.end, again);
    expect([...method.first]).toEqual([...again]);
  });
  it('keeps a sum that the slopes keep, over 10,000 steps, to rounding', () => {
    const flow: Slope = (_, y, out) => {
      const q = Math.sqrt(Math.abs((y[0] as number) - (y[1] as number))) * 0.3;
      out[0] = (y[0] as number) > (y[1] as number) ? -q : q;
      out[1] = -out[0];
    };
    const method = createDormandPrince(2);
    const y = Float64Array.from([5, 1]);
    flow(0, y, method.first);
    for (let i = 0; i < 10_000; i++) {
      method.attempt(flow, i, y, 0.01);
      y.set(method.end);
      method.accept();
    }
    expectWithin((y[0] as number) + (y[1] as number), 6, 1e-12);
  });
});

describe('step length', () => {
  it('shrinks after an error above 1 and for one that is no number, grows after a small one, within bounds', () => {
    expect(stepFactor(2, 1)).toBeLessThan(1);
    expect(stepFactor(Number.NaN, 1)).toBeLessThan(1);
    expect(stepFactor(1e9, 1)).toBeGreaterThanOrEqual(0.2);
    expect(stepFactor(0.01, 0.01)).toBeGreaterThan(1);
    expect(stepFactor(0, 1)).toBeLessThanOrEqual(5);
  });
});

describe('a root', () => {
  it.each([
    ['x³ − 2', (x: number) => x ** 3 - 2, 0, 5, Math.cbrt(2)],
    ['cos x − x', (x: number) => Math.cos(x) - x, -1, 3, 0.7390851332151607],
    ['a step at 0.3', (x: number) => (x < 0.3 ? -1 : 1), -2, 9, 0.3],
    ['a flat touch, (x − 1)⁵', (x: number) => (x - 1) ** 5, -4, 3, 1],
    ['√ with infinite slope', (x: number) => Math.sign(x - 2) * Math.sqrt(Math.abs(x - 2)), -1, 7, 2],
  ])('of %s is found to 1e-9', (_, f, a, b, root) => {
    expectWithin(findRoot(f, a, b, 1e-10), root, 1e-9);
    expectWithin(findRoot(f, b, a, 1e-10), root, 1e-9);
  });
  it('is NaN where the signs are alike, and an end that is one is taken', () => {
    expect(findRoot((x) => x * x + 1, -1, 1, 1e-9)).toBeNaN();
    expect(findRoot((x) => x, 0, 1, 1e-9)).toBe(0);
  });
  it('costs few calls on a smooth function', () => {
    let calls = 0;
    findRoot(
      (x) => {
        calls++;
        return Math.exp(x) - 3;
      },
      0,
      4,
      1e-12,
    );
    expect(calls).toBeLessThan(14);
  });
});

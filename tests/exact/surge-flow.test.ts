import {
  areaBelow,
  headIntegral,
  laminarShare,
  notchFlow,
  type OpeningShape,
  rehbock,
} from 'pan-core/oil/index.js';
import { describe, expect, it } from 'vitest';
import { expectWithin } from '../numbers.js';

const shape: OpeningShape = {
  triangles: Int32Array.from([0, 1, 2, 0, 2, 3]),
  areas: Float64Array.from([500, 500]),
  values: new Float64Array(4),
};
/** A rectangle 20 wide, its foot at `foot`, 50 high. */
const upright = (foot: number): Float64Array => Float64Array.from([foot, foot, foot + 50, foot + 50]);
const FINE = 1e-6;

describe('∫ √head dA over a rectangle 20 by 50 mm', () => {
  it('falling freely from above its top: ⅔·b·(h₁^1.5 − h₀^1.5)', () => {
    const expected = (2 / 3) * 20 * (80 ** 1.5 - 30 ** 1.5);
    expectWithin(headIntegral(shape, upright(0), 80, -10, FINE), expected, 1e-12 * expected);
  });
  it('part full: ⅔·b·h^1.5', () => {
    const expected = (2 / 3) * 20 * 37 ** 1.5;
    expectWithin(headIntegral(shape, upright(0), 37, -1e9, FINE), expected, 1e-12 * expected);
  });
  it('drowned: area·√Δ', () => {
    expectWithin(headIntegral(shape, upright(-200), 25, 0, FINE), 1000 * 5, 1e-9);
  });
  it('part drowned: b·d·√Δ + ⅔·b·Δ^1.5', () => {
    const expected = 20 * (12 * Math.sqrt(20) + (2 / 3) * 20 ** 1.5);
    expectWithin(headIntegral(shape, upright(0), 32, 12, FINE), expected, 1e-10 * expected);
  });
  it('lying level: area·√head', () => {
    expectWithin(headIntegral(shape, new Float64Array(4), 64, -1e9, FINE), 8000, 1e-9);
  });
  it('nearly level, a thousandth of a millimetre from foot to top: the same to 1e-5', () => {
    const heights = Float64Array.from([0, 0, 1e-3, 1e-3]);
    expectWithin(headIntegral(shape, heights, 64, -1e9, FINE), 8000, 0.08);
  });
  it('nothing when the levels are equal or both are below it', () => {
    expect(headIntegral(shape, upright(0), 30, 30, FINE)).toBe(0);
    expect(headIntegral(shape, upright(100), 90, 30, FINE)).toBe(0);
  });
  it('turns linear where levels meet: area·Δ/√δ for Δ far below δ', () => {
    const expected = (1000 * 1e-4) / Math.sqrt(2);
    expectWithin(headIntegral(shape, upright(-200), 1e-4, 0, 2), expected, 1e-8 * expected);
  });
});

describe('a triangle standing on its tip, 40 wide, 30 high', () => {
  const tip: OpeningShape = {
    triangles: Int32Array.from([0, 1, 2]),
    areas: Float64Array.from([600]),
    values: new Float64Array(3),
  };
  it('part full: (8/15)·tan(half angle)·h^2.5 and area b·h²/2H', () => {
    const heights = Float64Array.from([0, 30, 30]);
    const vee = (8 / 15) * (20 / 30) * 21 ** 2.5;
    expectWithin(headIntegral(tip, heights, 21, -1e9, FINE), vee, 1e-12 * vee);
    expectWithin(areaBelow(tip, heights, 21), (40 / 30) * (21 ** 2 / 2), 1e-10);
  });
  it('part drowned: (b/H)·(d²/2·√Δ + ⅔·h·Δ^1.5 − ⅖·Δ^2.5)', () => {
    const heights = Float64Array.from([30, 0, 30]);
    const [h, d] = [21, 9];
    const gap = h - d;
    const expected =
      (40 / 30) * ((d ** 2 / 2) * Math.sqrt(gap) + (2 / 3) * h * gap ** 1.5 - (2 / 5) * gap ** 2.5);
    expectWithin(headIntegral(tip, heights, h, d, FINE), expected, 1e-10 * expected);
  });
});

describe('discharge', () => {
  it('a notch is ⅔·C_d·b·√(2g)·H^1.5, nothing without head', () => {
    expectWithin(notchFlow(0.6, 100, 25, 9810), (2 / 3) * 0.6 * 100 * Math.sqrt(19620) * 125, 1e-6);
    expect(notchFlow(0.6, 100, -1, 9810)).toBe(0);
  });
  it('Rehbock holds up to a head as high as the sill, and stays there', () => {
    expectWithin(rehbock(0.5), 0.651, 1e-12);
    expectWithin(rehbock(7), 0.691, 1e-12);
  });
  it('thick oil: C_d = δ·√Re with Re from the mean speed; thin oil: the sharp edge alone', () => {
    const [sharp, laminar, speed, diameter, viscosity] = [0.61, 0.2, 50, 4, 2000];
    const cd = sharp * laminarShare(sharp, laminar, speed, diameter, viscosity);
    const reynolds = (cd * speed * diameter) / viscosity;
    expectWithin(cd, laminar * Math.sqrt(reynolds), 1e-6 * cd);
    expectWithin(laminarShare(sharp, laminar, 1000, 50, 10), 1, 1e-6);
  });
});

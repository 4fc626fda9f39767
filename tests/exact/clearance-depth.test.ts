import { itemSolid } from 'pan-core/clearance/carried.js';
import { hullOfShape } from 'pan-core/clearance/obstacle-hull.js';
import { deepestPoint, depthBody, type RoundHull } from 'pan-core/geometry/index.js';
import { describe, expect, test } from 'vitest';
import { expectWithin } from '../numbers.js';

type P = readonly [number, number, number];

const solid = (min: P, max: P) => itemSolid({ name: 'solid', shape: { kind: 'box', min, max } });
const box = (min: P, max: P): RoundHull => hullOfShape({ kind: 'box', min, max });
const rod = (from: P, to: P, diameter: number): RoundHull =>
  hullOfShape({ kind: 'rod', from, to, diameter, travel: [0, 0, 0] });

const TOLERANCE = 1e-6;
const depth = (solids: readonly ReturnType<typeof solid>[], hull: RoundHull): number =>
  deepestPoint(depthBody(solids), hull, 0, TOLERANCE).depth;

/** Never under the true depth, and over it by no more than the stated tolerance (twice, for the surface's own 1e-7). */
const expectDepth = (actual: number, expected: number): void =>
  expectWithin(actual, expected + TOLERANCE / 2, TOLERANCE);

const block = [solid([0, 0, 0], [100, 80, 60])];
const everything = box([-50, -50, -50], [500, 500, 500]);

describe('an obstacle inside one box', () => {
  test.each<[string, RoundHull, number]>([
    ['pushed through a face', box([93, 20, 20], [200, 40, 40]), 7],
    ['a plate edge on', box([95, -10, -10], [300, 90, 90]), 5],
    ['at an edge, by the lesser way out', box([96, 73, 20], [300, 300, 40]), 4],
    ['at a corner', box([97, 75, 58], [300, 300, 300]), 2],
    ['right through, to the middle plane', box([-10, 30, 35], [200, 50, 90]), 25],
    ['all round it, half its height', everything, 30],
    ['a rod through a face', rod([60, 40, 62], [400, 40, 62], 10), 3],
    ['a rod straight in', rod([80, 40, 30], [400, 40, 30], 8), 24],
  ])('%s', (_, hull, expected) => {
    expectDepth(depth(block, hull), expected);
  });

  test('the deepest point is given with the face it must leave by', () => {
    const found = deepestPoint(depthBody(block), box([93, 20, 20], [200, 40, 40]), 0, TOLERANCE);
    expectWithin(found.at[0], 93, 1e-5);
    expect(found.facet?.normal[0]).toBe(1);
  });

  test('touching is no depth', () => {
    expectWithin(depth(block, box([100, 0, 0], [200, 80, 60])), 0, TOLERANCE);
    expectWithin(depth(block, box([100, 80, 60], [200, 180, 160])), 0, TOLERANCE);
  });
});

describe('a union', () => {
  test('seams between its solids are no way out', () => {
    const halves = [solid([0, 0, 0], [37, 80, 60]), solid([37, 0, 0], [100, 80, 60])];
    expectDepth(depth(halves, everything), 30);
    expectDepth(depth(halves, box([30, 38, -10], [44, 42, 28])), 28);
  });

  test('solids that overlap count once', () => {
    const crossed = [
      solid([0, 0, 0], [70, 80, 60]),
      solid([30, 0, 0], [100, 80, 60]),
      solid([10, 10, 10], [20, 20, 20]),
    ];
    expectDepth(depth(crossed, everything), 30);
  });

  test('an L is deepest between its outer faces and its inner edge', () => {
    // Along the diagonal the outer faces are t away and the inner edge √2·(40 − t): equal at t = 40√2/(1 + √2).
    const ell = [solid([0, 0, 0], [90, 40, 400]), solid([0, 0, 0], [40, 90, 400])];
    expectDepth(depth(ell, everything), (40 * Math.SQRT2) / (1 + Math.SQRT2));
  });

  test('three arms meet deepest between three inner edges and a corner of outer faces', () => {
    // A cube corner with three bars of side a along the axes: distance to each far inner edge, as above, but in
    // the plane of two axes only; the third arm leaves the same 2-D answer.
    const a = 40;
    const arms = [
      solid([0, 0, 0], [120, a, a]),
      solid([0, 0, 0], [a, 120, a]),
      solid([0, 0, 0], [a, a, 120]),
    ];
    // On the diagonal (t, t, t): outer faces t; inner edge along each axis through (a, a): √2·(a − t).
    expectDepth(depth(arms, everything), (a * Math.SQRT2) / (1 + Math.SQRT2));
  });

  test('a rod in a slot between two solids is outside both', () => {
    const slot = [solid([0, 0, 0], [40, 80, 60]), solid([60, 0, 0], [100, 80, 60])];
    expect(depth(slot, rod([50, -20, 30], [50, 100, 30], 19))).toBe(0);
    expectDepth(depth(slot, rod([50, -20, 30], [50, 100, 30], 26)), 3);
  });
});

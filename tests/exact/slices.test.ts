import {
  buildPan,
  type CuttingPlane,
  createOilSystem,
  rampAnswer,
  restAnswer,
  sliceMetal,
  sliceOil,
  sliceRooms,
} from 'pan-core';
import { type Polygon, polygonArea } from 'pan-core/geometry/index.js';
import { describe, expect, test } from 'vitest';
import { expectWithin } from '../numbers.js';
import { stepDesign } from '../sample-design.js';

const lengthwise = (y: number): CuttingPlane => ({ at: [0, y, 0], right: [1, 0, 0], upward: [0, 0, 1] });
const areaOf = (slices: readonly { readonly outline: Polygon }[]): number =>
  slices.reduce((sum, { outline }) => sum + polygonArea(outline), 0);

// A sump 300 by 200 wide and 200 deep with a shallow 50 deep ahead of it, equal sections all across.
describe('a pan of one width, cut lengthwise', () => {
  const system = createOilSystem(
    buildPan(
      stepDesign((d) => {
        d.engine.crankcaseDisplaced = 0;
      }),
    ),
  );
  const { model } = system;
  const half = model.design.pan.left[0]?.[1] ?? 0;

  test('has oil of volume over width, at rest, braking and accelerating, at every height across', () => {
    for (const forward of [0, -0.4, -0.9, 0.5])
      for (const y of [-0.9 * half, 0, 0.37 * half]) {
        const answer = rampAnswer(system, 4e6, { forward, left: 0, grade: 0 }, 'held');
        const plane = lengthwise(y);
        const oil = sliceOil(sliceRooms(model, plane), plane, answer);
        expectWithin(areaOf(oil), 4e6 / (2 * half), (1e-6 * 4e6) / (2 * half), `${forward} g at y ${y}`);
      }
  });

  test('counts every pool by its place in the answer', () => {
    const answer = rampAnswer(system, 5e6, { forward: -1, left: 0, grade: 0 }, 'held');
    const plane = lengthwise(0);
    const oil = sliceOil(sliceRooms(model, plane), plane, answer);
    answer.pools.forEach(({ volume }, i) => {
      const area = areaOf(oil.filter(({ pool }) => pool === i));
      expectWithin(area, volume / (2 * half), 1e-6 * (volume / (2 * half)) + 1e-6, `pool ${i}`);
    });
  });

  test('is drawn with its floor and ends: the metal is as long as they are', () => {
    const skin = sliceMetal(model, lengthwise(0)).filter(({ owner }) => owner === 'belly');
    const length = skin
      .flatMap(({ segments }) => segments)
      .reduce((sum, [a, b]) => sum + Math.hypot(b[0] - a[0], b[1] - a[1]), 0);
    const floor = model.design.pan.floor;
    const [first, last] = [floor[0], floor[floor.length - 1]];
    const run = floor.reduce((sum, p, i) => {
      const q = floor[i + 1];
      return q === undefined ? sum : sum + Math.hypot(q[0] - p[0], q[1] - p[1]);
    }, 0);
    expectWithin(length, run + (first?.[1] ?? 0) + (last?.[1] ?? 0), 1e-9, 'floor and ends');
  });

  test('has nothing to show beyond its end', () => {
    expect(sliceRooms(model, lengthwise(half + 500))).toEqual([]);
  });
});

test('level oil lies level: its top edge is the surface that the answer names', () => {
  const system = createOilSystem(buildPan(stepDesign()));
  const plane = lengthwise(0);
  const answer = restAnswer(system, 3e6);
  const oil = sliceOil(sliceRooms(system.model, plane), plane, answer);
  const top = Math.max(...oil.flatMap(({ outline }) => outline.map((p) => p[1])));
  expectWithin(-top, answer.pools[0]?.surface ?? Number.NaN, 1e-9, 'surface');
});

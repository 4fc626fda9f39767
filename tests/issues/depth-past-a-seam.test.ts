import { itemSolid } from 'pan-core/clearance/carried.js';
import { deepestPoint, depthBody } from 'pan-core/geometry/index.js';
import { expect, test } from 'vitest';
import { type Block, depthIn, type P } from '../block-depth.js';
import { expectWithin } from '../numbers.js';

// A corner a ten-millionth of a millimetre aside was lost where pieces of a surface were joined; the joined piece then
// ran through the inside of the body, and a point was told to be 19.4 mm deep that is 23.4 mm deep.
test('joined pieces of a surface stay on the surface', () => {
  const blocks: readonly Block[] = [
    { min: [-10, -60, -20], max: [60, -20, 40] },
    { min: [-10, -40, -20], max: [30, 40, 60] },
    { min: [0, 10, 10], max: [70, 90, 60] },
  ];
  const body = depthBody(blocks.map((b) => itemSolid({ name: 'block', shape: { kind: 'box', ...b } })));
  const depth = depthIn(blocks);
  const at: P = [13.431456065051815, -36.56854009952072, 16.667678202284232];
  expectWithin(deepestPoint(body, { points: [at], radius: 0 }, 0, 1e-6).depth, depth(at), 2e-6);
  // Area of the outside: every block's faces less what the others cover, by the cells of their grid.
  const area = body.boundary.reduce((sum, { loop, normal }) => sum + areaOf(loop, normal), 0);
  expectWithin(area, surfaceOf(blocks), 1e-3);
  expect(body.boundary.length).toBeLessThan(30);
});

// Planes on either side of a flat triangle left nothing between them, to the last digit, and a part of it was passed over.
test('a flat triangle is as deep as the deepest of its points', () => {
  const blocks: readonly Block[] = [
    { min: [-60, -30, 20], max: [20, 50, 70] },
    { min: [-10, 20, -40], max: [70, 80, 40] },
  ];
  const body = depthBody(blocks.map((b) => itemSolid({ name: 'block', shape: { kind: 'box', ...b } })));
  const triangle: readonly P[] = [
    [8.703989028930664, 58.455291748046875, 20.9101619720459],
    [28.625473022460938, 66.87796020507812, 20.9101619720459],
    [18.500070571899414, 35.28538131713867, 20.9101619720459],
  ];
  const at: P = [14.57323068352985, 44.573230554709134, 20.9101619720459];
  expect(deepestPoint(body, { points: triangle, radius: 0 }, 0, 1e-6).depth).toBeGreaterThan(
    depthIn(blocks)(at) - 1e-6,
  );
});

const areaOf = (loop: readonly P[], normal: P): number =>
  loop.reduce((sum, p, i) => {
    const q = loop[(i + 1) % loop.length] as P;
    const turn = [p[1] * q[2] - p[2] * q[1], p[2] * q[0] - p[0] * q[2], p[0] * q[1] - p[1] * q[0]];
    return sum + turn.reduce((dot, v, k) => dot + v * normal[k]!, 0) / 2;
  }, 0);

const surfaceOf = (blocks: readonly Block[]): number => {
  const [xs, ys, zs] = ([0, 1, 2] as const).map((k) =>
    [...new Set([-1e3, ...blocks.flatMap((b) => [b.min[k], b.max[k]]), 1e3])].sort((a, b) => a - b),
  ) as [number[], number[], number[]];
  const full = (i: number, j: number, k: number): boolean =>
    blocks.some(
      ({ min, max }) =>
        min[0] <= xs[i]! &&
        max[0] >= xs[i + 1]! &&
        min[1] <= ys[j]! &&
        max[1] >= ys[j + 1]! &&
        min[2] <= zs[k]! &&
        max[2] >= zs[k + 1]!,
    );
  let area = 0;
  for (let i = 0; i + 2 < xs.length; i++)
    for (let j = 0; j + 2 < ys.length; j++)
      for (let k = 0; k + 2 < zs.length; k++) {
        const [x, y, z] = [xs[i + 1]! - xs[i]!, ys[j + 1]! - ys[j]!, zs[k + 1]! - zs[k]!];
        const here = full(i, j, k);
        if (here !== full(i + 1, j, k)) area += y * z;
        if (here !== full(i, j + 1, k)) area += x * z;
        if (here !== full(i, j, k + 1)) area += x * y;
      }
  return area;
};

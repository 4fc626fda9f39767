import {
  buildPan,
  crankDips,
  createOilSystem,
  type Design,
  depthUnderOil,
  rampAnswer,
  restAnswer,
} from 'pan-core';
import { describe, expect, test } from 'vitest';
import { expectWithin } from '../numbers.js';
import { type Mutable, stepDesign } from '../sample-design.js';

const systemOf = (change: (d: Mutable<Design>) => void = () => {}) =>
  createOilSystem(buildPan(stepDesign(change)));

/** The sweep: 62 above the rail, radius 96/2 + 41 = 89, so its lowest point is 27 under the rail. */
const LOWEST = -27;
const RADIUS = 89;

describe('at rest and level', () => {
  const system = systemOf();
  test('a throw dips by as much as its lowest point lies under the surface', () => {
    // 16 L fill it to the rail over 700 × 200 mm; 1.4 L less stands 10 mm lower.
    const dips = crankDips(system.model, restAnswer(system, 14.6e6));
    expect(dips.length).toBe(6);
    for (const { depth } of dips) expectWithin(depth, -10 - LOWEST, 1e-9, 'dip');
  });
  test('clear of the oil, the depth is negative by the air between', () => {
    const dips = crankDips(system.model, restAnswer(system, 6e6));
    // The throws at 70, 172 and 274 hang over 100 mm of oil in the sump; ahead of it there is none below.
    for (const { depth } of dips.slice(0, 3)) expectWithin(depth, -(100 + LOWEST), 1e-9, 'clear');
    for (const { depth } of dips.slice(3)) expect(depth).toBeNull();
  });
});

test('braking at 1 g stands the oil at 45°, deepest on the front of the foremost throw', () => {
  const system = systemOf();
  const answer = rampAnswer(system, 12e6, { forward: -1, left: 0, grade: 0 }, 'settled');
  const front = crankDips(system.model, answer)[5];
  const pool = answer.pools.reduce((a, b) =>
    Math.max(...b.cells.map((c) => reach(system, c))) > Math.max(...a.cells.map((c) => reach(system, c)))
      ? b
      : a,
  );
  // Up is (−1, 0, 1)/√2: heights of the disc's lowest point at the front edge of the big end, x 580 + 15.
  const lowest = (-(580 + 15) + LOWEST) / Math.SQRT2;
  expectWithin(front?.depth, pool.level - lowest, 1e-6, 'dip');
  expect(front?.depth).toBeGreaterThan(0);
});

const reach = (system: ReturnType<typeof systemOf>, cell: number): number =>
  Math.max(...(system.model.cells[cell]?.faces.flatMap((f) => f.loop.map((p) => p[0])) ?? []));

test('cornering turns the lowest point round the crank', () => {
  const system = systemOf();
  const answer = rampAnswer(system, 14.6e6, { forward: 0, left: 0.5, grade: 0 }, 'settled');
  expect(answer.pools.length).toBe(1);
  const up = [0, 1 / Math.hypot(1, 0.5), 1 / Math.hypot(1, 0.5)] as const;
  const lowest = (62 * 1) / Math.hypot(1, 0.5) - RADIUS;
  expectWithin(answer.up[1], 0.5 * up[1], 1e-12, 'up');
  const { depth } = crankDips(system.model, answer)[0] ?? { depth: null };
  expectWithin(depth, (answer.pools[0]?.level ?? Number.NaN) - lowest, 1e-6, 'dip');
});

describe('a point', () => {
  const system = systemOf();
  const answer = restAnswer(system, 6e6);
  test('under oil by its depth', () => {
    expectWithin(depthUnderOil(system.model, answer, [150, 20, -180]), 80, 1e-9, 'depth');
  });
  test('over oil by its height', () => {
    expectWithin(depthUnderOil(system.model, answer, [150, 20, 40]), -140, 1e-9, 'height');
  });
  test('over dry sheet: nothing', () => {
    expect(depthUnderOil(system.model, answer, [500, 0, 0])).toBeNull();
  });
});

test('under a lid the oil is still the first oil plumb below', () => {
  const system = systemOf((d) => {
    d.baffles = [
      {
        kind: 'lid',
        name: 'lid',
        down: 150,
        rear: 0,
        front: 200,
        span: null,
        fixed: 'bolted',
        thickness: 0,
        holes: [],
      },
    ];
  });
  const height = 2e6 / (300 * 200);
  expectWithin(
    depthUnderOil(system.model, restAnswer(system, 2e6), [100, 0, -120]),
    height - 80,
    1e-9,
    'height',
  );
});

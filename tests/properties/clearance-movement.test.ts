import { clearances } from 'pan-core/clearance/index.js';
import type { Design, Obstacle } from 'pan-core/design/index.js';
import { hullGap, rotate3, tiltedToLevel, turnAboutX } from 'pan-core/geometry/index.js';
import { floorProfile, outerSolids } from 'pan-core/pan/index.js';
import { expect, test } from 'vitest';
import { type Dice, diceFrom, seedOr } from '../dice.js';
import { randomPan } from '../random-design.js';

type P = readonly [number, number, number];

const DEG = Math.PI / 180;

/** A box, a link at two places and a slanting plane somewhere round the pan. */
const things = (dice: Dice): readonly Obstacle[] => {
  const near = (): P => [dice.between(-60, 700), dice.between(-260, 260), dice.between(-330, -60)];
  const from = near();
  const box = near();
  return [
    {
      name: 'box',
      shape: { kind: 'box', min: box, max: [box[0] + 60, box[1] + 40, box[2] + 30] },
      clear: 15,
      plusMinus: 0,
    },
    {
      name: 'link',
      shape: {
        kind: 'rod',
        from,
        to: [from[0], from[1] + 200, from[2]],
        diameter: 24,
        travel: [0, 0, 0],
        positions: [
          [
            [from[0] + 20, from[1], from[2]],
            [from[0] + 30, from[1] + 200, from[2] + 10],
          ],
        ],
      },
      clear: 15,
      plusMinus: 0,
    },
    {
      name: 'plane',
      shape: { kind: 'plane', at: [0, 0, -320], normal: [Math.sin(0.1), 0, Math.cos(0.1)] },
      clear: 15,
      plusMinus: 0,
    },
  ];
};

/** How far a moved pan is from an obstacle at one place of it, corner by corner; 0 where they meet. */
const gapAt = (solids: readonly (readonly P[])[], { shape }: Obstacle, share: number): number => {
  if (shape.kind === 'plane') {
    const { normal: n, at } = shape;
    const height = (p: P): number => n[0] * (p[0] - at[0]) + n[1] * (p[1] - at[1]) + n[2] * (p[2] - at[2]);
    return Math.min(...solids.map((s) => Math.min(...s.map(height))));
  }
  if (shape.kind === 'rod') {
    const [a, b] = shape.positions?.[0] ?? [shape.from, shape.to];
    const mix = (p: P, q: P): P => [
      p[0] + share * (q[0] - p[0]),
      p[1] + share * (q[1] - p[1]),
      p[2] + share * (q[2] - p[2]),
    ];
    const rod = [mix(shape.from, a), mix(shape.to, b)];
    return Math.min(...solids.map((s) => hullGap(s, rod).distance)) - shape.diameter / 2;
  }
  if (shape.kind !== 'box') throw new Error('not a shape of this test');
  const { min, max } = shape;
  const corners = Array.from(
    { length: 8 },
    (_, i): P => [i & 1 ? max[0] : min[0], i & 2 ? max[1] : min[1], i & 4 ? max[2] : min[2]],
  );
  return Math.min(...solids.map((s) => hullGap(s, corners).distance));
};

test('a thousand random movements of random pans never come nearer than the worst says', () => {
  const seed = seedOr(1966);
  const dice = diceFrom(seed);
  const PANS = 8;
  let told = 0;
  for (let i = 0; i < PANS; i++) {
    const { design } = randomPan(seed + i);
    const moves = {
      rock: dice.between(0.5, 5) * DEG,
      up: dice.between(0, 12),
      down: dice.between(0, 12),
      foreAft: dice.between(0, 12),
    };
    const tilt = { noseUp: dice.between(-5, 5) * DEG, leanLeft: dice.between(-5, 5) * DEG };
    const moving: Design = {
      ...design,
      engine: { ...design.engine, railHoles: [], carries: [], topAboveRail: null, tilt },
      chassis: { ...design.chassis, axes: 'car', moves, obstacles: things(dice) },
    };
    const solids = outerSolids(moving, floorProfile(moving));
    const rows = clearances(moving, solids, []);
    const level = tiltedToLevel(tilt.noseUp, tilt.leanLeft);
    const height = moving.engine.crank?.centreAboveRail ?? 0;
    for (let k = 0; k < 1000 / PANS; k++) {
      const end = (low: number, high: number): number =>
        k % 2 === 0 ? dice.between(low, high) : dice.happens(0.5) ? low : high;
      const angle = end(-moves.rock, moves.rock);
      const [dx, dz] = [end(-moves.foreAft, moves.foreAft), end(-moves.down, moves.up)];
      const placed = solids.map((s) =>
        s.vertices.map((p): P => {
          const q = rotate3(level, turnAboutX(p, height, angle));
          return [q[0] + dx, q[1], q[2] + dz];
        }),
      );
      for (const obstacle of moving.chassis.obstacles) {
        const worst = rows.find(({ name }) => name === obstacle.name)?.worst ?? Number.NaN;
        const gap = gapAt(placed, obstacle, end(0, 1));
        if (gap > 0) told++;
        // The promise: never larger than the true distance by more than 1e-6.
        expect(worst, `seed ${seed}, pan ${i}, movement ${k}, ${obstacle.name}`).toBeLessThanOrEqual(
          gap + 1e-6,
        );
      }
    }
  }
  expect(told).toBeGreaterThan(1000);
});

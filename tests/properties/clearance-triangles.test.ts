import { clearances } from 'pan-core/clearance/index.js';
import type { Obstacle } from 'pan-core/design/index.js';
import { floorProfile, outerSolids } from 'pan-core/pan/index.js';
import { expect, test } from 'vitest';
import { diceFrom, seedOr } from '../dice.js';
import { expectWithin } from '../numbers.js';
import { randomPan } from '../random-design.js';
import { boxTriangles } from '../scan-of.js';
import { fan, type P, skinGap, skinOf } from '../skin-gap.js';

test('pan to box and rod is the least over every pair of triangles, on random pans', () => {
  const seed = seedOr(415);
  const dice = diceFrom(seed);
  let apart = 0;
  for (let i = 0; i < 8; i++) {
    const { design } = randomPan(seed + i);
    const near = (): P => [dice.between(-60, 700), dice.between(-260, 260), dice.between(-290, -30)];
    const obstacles = Array.from({ length: 4 }, (_, k): Obstacle => {
      const [a, b] = [near(), near()];
      const name = `thing ${k}`;
      return k % 2 === 0
        ? {
            name,
            shape: { kind: 'box', min: a, max: [a[0] + 30, a[1] + 50, a[2] + 25] },
            clear: 10,
            plusMinus: 0,
          }
        : {
            name,
            shape: { kind: 'rod', from: a, to: b, diameter: 20, travel: [0, 0, 0] },
            clear: 10,
            plusMinus: 0,
          };
    });
    const still = {
      ...design,
      engine: { ...design.engine, railHoles: design.engine.railHoles.slice(0, 3), carries: [] },
      chassis: {
        ...design.chassis,
        axes: 'pan' as const,
        moves: { rock: 0, up: 0, down: 0, foreAft: 0 },
        obstacles,
      },
    };
    const solids = outerSolids(still, floorProfile(still));
    const skin = skinOf(
      solids.flatMap((s) => s.faces.flatMap((face) => fan(face.map((k) => s.vertices[k] as P)))),
    );
    const rows = clearances(still, solids, []);
    for (const { name, shape } of obstacles) {
      const row = rows.find((r) => r.name === name);
      const [other, radius] =
        shape.kind === 'rod'
          ? [skinOf([[shape.from, shape.to, shape.to]]), shape.diameter / 2]
          : shape.kind === 'box'
            ? [skinOf(boxTriangles(shape.min, shape.max)), 0]
            : [skinOf([]), 0];
      if ((row?.distance ?? 0) <= 0) continue;
      apart++;
      expectWithin(row?.distance, skinGap(skin, other) - radius, 1e-6, `seed ${seed}, pan ${i}, ${name}`);
    }
  }
  expect(apart).toBeGreaterThan(8);
});

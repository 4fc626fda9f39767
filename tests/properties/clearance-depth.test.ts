import { itemSolid } from 'pan-core/clearance/carried.js';
import { hullOfShape } from 'pan-core/clearance/obstacle-hull.js';
import {
  deepestPoint,
  depthBody,
  hullGap,
  type RoundHull,
  rotate3,
  tiltedToLevel,
} from 'pan-core/geometry/index.js';
import { expect, test } from 'vitest';
import { type Block, depthIn, type P } from '../block-depth.js';
import { diceFrom, seedOr } from '../dice.js';

test('the deepest point of a random hull in a random union of boxes is the deepest there is', () => {
  const seed = seedOr(314);
  const dice = diceFrom(seed);
  let met = 0;
  for (let i = 0; i < 40; i++) {
    const what = `seed ${seed}, case ${i}`;
    const boxes = Array.from({ length: 4 }, (): Block => {
      const min: P = [dice.stepped(-60, 20, 10), dice.stepped(-60, 20, 10), dice.stepped(-60, 20, 10)];
      return {
        min,
        max: [
          min[0] + dice.stepped(20, 80, 10),
          min[1] + dice.stepped(20, 80, 10),
          min[2] + dice.stepped(20, 80, 10),
        ],
      };
    });
    const from: P = [dice.between(-60, 60), dice.between(-60, 60), dice.between(-60, 60)];
    const size: P = [dice.between(5, 60), dice.between(5, 60), dice.between(5, 60)];
    const to: P = [from[0] + size[0], from[1] + size[1], from[2] + size[2]];
    const shape: RoundHull = dice.happens(0.5)
      ? hullOfShape({ kind: 'box', min: from, max: to })
      : hullOfShape({ kind: 'rod', from, to, diameter: dice.between(4, 30), travel: [0, 0, 0] });
    const turn = tiltedToLevel(dice.between(-1, 1), dice.between(-1, 1));
    const hull: RoundHull = { radius: shape.radius, points: shape.points.map((p) => rotate3(turn, p)) };
    const body = depthBody(boxes.map((b) => itemSolid({ name: 'box', shape: { kind: 'box', ...b } })));
    const found = deepestPoint(body, hull, 0, 1e-6);

    const depth = depthIn(boxes);
    const inHull = (p: P): boolean => hullGap([p], hull.points).distance <= hull.radius;
    let best = { depth: 0, at: hull.points[0]! };
    const look = (p: P): void => {
      const here = depth(p);
      if (here > best.depth && inHull(p)) best = { depth: here, at: p };
    };
    const reach = Math.max(...hull.points.flatMap((p) => p.map((v) => Math.abs(v)))) + hull.radius;
    for (let k = 0; k < 3000; k++) {
      look([dice.between(-reach, reach), dice.between(-reach, reach), dice.between(-reach, reach)]);
    }
    // Then smaller and smaller steps from the best, to come as near to the top as chance can.
    for (let step = 10; step > 1e-3; step *= 0.8)
      for (let k = 0; k < 60; k++) {
        const by = (): number => dice.between(-step, step);
        look([best.at[0] + by(), best.at[1] + by(), best.at[2] + by()]);
      }
    if (best.depth > 0) met++;
    expect(found.depth, what).toBeGreaterThanOrEqual(best.depth - 2e-7);
    if (found.facet === null) continue;
    // The depth is reached where it is said to be, up to what the bound and the surface may be off.
    expect(Math.abs(depth(found.at) - found.depth), what).toBeLessThan(5e-6);
    expect(hullGap([found.at], hull.points).distance - hull.radius, what).toBeLessThan(1e-8);
  }
  expect(met).toBeGreaterThan(20);
});

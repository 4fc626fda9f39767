import { bodyOf } from 'pan-core/clearance/body.js';
import { formOf, type Motion } from 'pan-core/clearance/obstacle-form.js';
import { hullGap, NO_ROTATION } from 'pan-core/geometry/index.js';
import { floorProfile, outerSolids } from 'pan-core/pan/index.js';
import { expect, test } from 'vitest';
import { type Dice, diceFrom, seedOr } from '../dice.js';
import { expectWithin } from '../numbers.js';
import { randomPan } from '../random-design.js';
import { type P3, scanOf, type Triangle } from '../scan-of.js';

/** Slivers, points and flipped triangles round a pan, in single precision as a file holds them. */
const soup = (dice: Dice, count: number): readonly Triangle[] =>
  Array.from({ length: count }, (): Triangle => {
    const middle: P3 = [dice.between(-200, 900), dice.between(-400, 400), dice.between(-420, -215)];
    const size = dice.happens(0.1) ? 0 : dice.between(1, 40);
    const corner = (): P3 => [
      Math.fround(middle[0] + dice.between(-size, size)),
      Math.fround(middle[1] + dice.between(-size, size)),
      Math.fround(middle[2] + dice.between(-size, size) / 4),
    ];
    return [corner(), corner(), corner()];
  });

test('the gap from random pans to random soups is the least over all pairs', () => {
  const seed = seedOr(4711);
  const dice = diceFrom(seed);
  let apart = 0;
  for (let i = 0; i < 4; i++) {
    const { design, profile } = randomPan(seed + i);
    const body = bodyOf(outerSolids(design, profile ?? floorProfile(design)));
    const triangles = soup(dice, 50);
    const form = formOf(scanOf(triangles));
    const least = (place: (p: P3) => P3): number => {
      let found = Number.POSITIVE_INFINITY;
      for (const triangle of triangles) {
        const placed = triangle.map(place);
        for (const { vertices } of body.solids) found = Math.min(found, hullGap(vertices, placed).distance);
      }
      return found;
    };
    const still: Motion = {
      toChassis: NO_ROTATION,
      rock: { height: 0, angle: 0 },
      moves: null,
      shift: [0, 0, 0],
    };
    const nominal = form.approach(body, still).distance;
    const expected = least((p) => p);
    if (expected > 0) {
      apart++;
      expectWithin(nominal, expected, 1e-6, `seed ${seed}, pan ${i}`);
    } else expect(nominal, `seed ${seed}, pan ${i}`).toBeLessThanOrEqual(0);
  }
  expect(apart).toBeGreaterThan(0);
});

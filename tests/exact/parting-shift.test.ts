import { bodyOf } from 'pan-core/clearance/body.js';
import { itemSolid } from 'pan-core/clearance/carried.js';
import { hullOfShape } from 'pan-core/clearance/obstacle-hull.js';
import { partingShift } from 'pan-core/clearance/parting-shift.js';
import { expect, test } from 'vitest';

type P = readonly [number, number, number];

const body = bodyOf([
  itemSolid({ name: 'block', shape: { kind: 'box', min: [0, 0, 0], max: [100, 80, 60] } }),
]);
const STILL = { height: 0, angle: 0 };

// Boxes square to each other part by the least overlap of their sides: plain subtraction.
test.each<[string, P, P, number]>([
  ['through a face', [93, 20, 20], [200, 40, 40], 7],
  ['at an edge', [96, 73, 20], [300, 300, 40], 4],
  ['at a corner', [97, 75, 58], [300, 300, 300], 2],
  ['only touching', [100, 20, 20], [200, 40, 40], 0],
  ['apart', [110, 20, 20], [200, 40, 40], 0],
])('a box %s', (_, min, max, expected) => {
  expect(partingShift(body, hullOfShape({ kind: 'box', min, max }), STILL)).toBeCloseTo(expected, 9);
});

test('a rocking block is worse than a still one by what its edge swings', () => {
  const hull = hullOfShape({ kind: 'box', min: [20, 70, 20], max: [40, 200, 40] });
  const still = partingShift(body, hull, STILL);
  const rocking = partingShift(body, hull, { height: 0, angle: 0.05 });
  expect(still).toBeCloseTo(10, 9);
  // The hull's near corner at height 40 swings by no more than 40·0.05 and what 70 loses to the cosine.
  expect(rocking).toBeGreaterThan(11.9);
  expect(rocking).toBeLessThan(12.5);
});

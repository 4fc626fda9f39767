import { bodyOf } from 'pan-core/clearance/body.js';
import { itemSolid } from 'pan-core/clearance/carried.js';
import { motionOf } from 'pan-core/clearance/engine-motion.js';
import { formOf } from 'pan-core/clearance/obstacle-form.js';
import { NO_ROTATION } from 'pan-core/geometry/index.js';
import { expect, test } from 'vitest';
import { expectWithin } from '../numbers.js';
import { boxTriangles, scanOf, type Triangle } from '../scan-of.js';

// A scan of one facet a million times had every one of them looked at for every distance: a check did not end.
test('a facet that a scan holds again and again is looked at once', () => {
  const one: Triangle = [
    [20, 5, 5],
    [30, 0, 12],
    [30, 9, 4],
  ];
  const scan = scanOf([
    ...Array.from({ length: 50_000 }, () => one),
    ...boxTriangles([90, 0, 0], [99, 9, 9]),
  ]);
  expect(scan.soup?.tree().order).toHaveLength(13);
  const body = bodyOf([
    itemSolid({ name: 'block', shape: { kind: 'box', min: [0, 0, 0], max: [10, 10, 10] } }),
  ]);
  const form = formOf(scan);
  const gaps = [1, 2].map(() => form.approach(body, motionOf(NO_ROTATION)).distance);
  for (const gap of gaps) expectWithin(gap, 10, 1e-9);
});

import { checkDesign } from 'pan-core/check/index.js';
import { expect, it } from 'vitest';
import { sampleDesign } from '../sample-design.js';

it('a pickup tube whose way is not given is a warning: it is not among what must be known', () => {
  const design = sampleDesign((d) => {
    d.pickup.route = [];
  });
  const report = checkDesign({ design, assumed: [], unknown: [] });
  expect(report.checks.filter((c) => c.status === 'unknown').map((c) => c.id)).toEqual([]);
  const tube = report.checks.filter((c) => c.id === 'clear_rods_to_pickup_tube' || c.id === 'suction_cold');
  expect(tube.map((c) => [c.status, c.value])).toEqual([
    ['warn', null],
    ['warn', null],
  ]);
});

import { readDesign } from 'pan-core/design/index.js';
import { buildPan, fitReport } from 'pan-core/index.js';
import { expect, test } from 'vitest';
import { parse } from 'yaml';
import { exampleText } from '../design-text.js';

test('the work on a fit is told from its first clearance to the way out, and never goes back', () => {
  const read = readDesign(parse(exampleText('demo')));
  const told: number[] = [];
  fitReport(
    read,
    buildPan(read.design),
    { range: { foreAft: [-20, 20], height: [-20, 20] }, tilts: [] },
    (share) => told.push(share),
  );
  expect(told[0]).toBe(0);
  told.reduce((before, share) => {
    expect(share).toBeGreaterThanOrEqual(before);
    return share;
  }, 0);
  expect(told[told.length - 1]).toBeLessThanOrEqual(1);
  // The obstacles one by one, the search for room and the search for a way out: each speaks for itself.
  const within = (from: number, to: number) => told.filter((share) => share >= from && share < to).length;
  expect(within(0, 0.1)).toBeGreaterThan(2 * read.design.chassis.obstacles.length - 1);
  expect(within(0.1, 0.5)).toBeGreaterThan(20);
  expect(within(0.5, 1)).toBeGreaterThan(20);
});

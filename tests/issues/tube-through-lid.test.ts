import { checkDesign } from 'pan-core/check/index.js';
import { expect, test } from 'vitest';
import { changed, exampleText, read } from '../design-text.js';

// A lid over the mouth was cut without a hole for the pickup's tube, and nothing said so.
const through = async (text: string) =>
  checkDesign(await read(text)).checks.filter(({ id }) => id === 'pickup_baffle');

test('a lid that the tube runs through without a hole is told, with the place and the size', async () => {
  const [found, ...more] = await through(exampleText('demo'));
  expect(more).toEqual([]);
  expect(found?.status).toBe('warn');
  // The route's first leg, from z -120 at x 140, y 0 to z -60 at x 205, y 50, meets the lid's faces at z -79 and -82.
  const share = (-82 + 120) / (-60 + 120);
  const [x, y] = [140 + 65 * share, 50 * share];
  const said =
    /x (\d+), y (\d+), z (-\d+)/
      .exec(found?.because ?? '')
      ?.slice(1)
      .map(Number) ?? [];
  expect(Math.abs((said[0] ?? 0) - x)).toBeLessThan(4);
  expect(Math.abs((said[1] ?? 0) - y)).toBeLessThan(3);
  // Bore 22, walls of 1.5, a millimetre round it.
  expect(found?.try).toContain('a hole of 27 mm');
});

test('a lid with a hole there is not', async () => {
  const holed = changed(
    exampleText('demo'),
    'lid_down: 82,',
    'lid_down: 82, holes: [{at: [182, 32], diameter: 27}],',
  );
  expect(await through(holed)).toEqual([]);
});

import { createBody, createOriented, orient, sweepLevels } from 'pan-core/oil/index.js';
import { expect, it } from 'vitest';
import { exact, exactVolume, toNumber, upFrom } from '../fixed-point.js';
import { tellWorst } from '../published/accuracy.js';
import { randomFrom } from '../random.js';
import { randomPan } from '../random-design.js';

const SEED = 90_412;
const PANS = 60;
const LEVELS = 8;

it(`many levels along one direction against arithmetic that does not round, ${PANS} random pans, seed ${SEED}`, () => {
  const r = randomFrom(SEED);
  let worst = 0;
  for (let i = 0; i < PANS; i++) {
    const model = randomPan(SEED + i);
    const body = createBody(model);
    const all = model.cells.map((_, c) => c);
    const cells = i % 3 === 0 ? all.filter(() => r() < 0.6) : all;
    if (cells.length === 0) continue;
    const whole = cells.reduce((sum, c) => sum + (body.capacity[c] as number), 0);
    const tiny = i % 2 === 0 ? 10 ** -(3 + 5 * r()) : 1;
    const up = i % 10 === 0 ? upFrom(0, 0) : upFrom((r() - 0.5) * 3 * tiny, (r() - 0.5) * 3 * tiny);
    const o = orient(createOriented(body), up);
    const volumes = Array.from({ length: LEVELS }, () => whole * r()).sort((a, b) => a - b);
    const levels = sweepLevels(o, cells, volumes, new Float64Array(LEVELS));
    for (const [k, volume] of volumes.entries()) {
      const truth = exactVolume(model, cells, up, body.origin, levels[k] as number);
      const miss = Math.abs(toNumber(truth - exact(volume))) / whole;
      worst = Math.max(worst, miss);
      expect(miss, `seed ${SEED + i}, level ${k}`).toBeLessThanOrEqual(1e-13);
    }
  }
  tellWorst(
    'Volume under many levels along one direction, as a share of the whole',
    worst,
    1e-13,
    '1',
    `arithmetic that does not round, ${PANS} random pans, ${LEVELS} levels each`,
  );
});

it('stops at the lowest point for no oil and at the highest for all of it, and takes equal volumes', () => {
  const model = randomPan(SEED);
  const body = createBody(model);
  const cells = model.cells.map((_, c) => c);
  const o = orient(createOriented(body), upFrom(0.2, -0.1));
  const whole = body.capacity.reduce((a, b) => a + b, 0);
  const volumes = [-1, 0, 1e-9, whole / 3, whole / 3, whole, 2 * whole];
  const levels = sweepLevels(o, cells, volumes, new Float64Array(volumes.length));
  const [low, high] = [Math.min(...o.low), Math.max(...o.high)];
  expect([levels[0], levels[1]]).toEqual([low, low]);
  expect([levels[5], levels[6]]).toEqual([high, high]);
  expect(levels[4]).toBe(levels[3]);
  expect(levels[2]).toBeLessThan(low + 0.1);
});

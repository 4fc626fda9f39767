import {
  createBody,
  createMeasure,
  createOriented,
  measureCells,
  orient,
  solveLevel,
} from 'pan-core/oil/index.js';
import { expect, it } from 'vitest';
import { exact, exactVolume, toNumber, upFrom } from '../fixed-point.js';
import { tellWorst } from '../published/accuracy.js';
import { randomFrom } from '../random.js';
import { randomPan } from '../random-design.js';

const SEED = 20_261;
const PANS = 2000;

it(`level and volume against arithmetic that does not round, ${PANS} random pans, seed ${SEED}`, () => {
  const r = randomFrom(SEED);
  let [worstVolume, worstLevel, worstSum] = [0, 0, 0];
  for (let i = 0; i < PANS; i++) {
    const model = randomPan(SEED + i);
    const body = createBody(model);
    const cells = model.cells.map((_, c) => c);
    const whole = body.capacity.reduce((a, b) => a + b, 0);
    const out = createMeasure();
    const tiny = r() < 0.2 ? 10 ** -(3 + 5 * r()) : 1;
    const level = r() < 0.05;
    const up = level ? upFrom(0, 0) : upFrom((r() - 0.5) * 3 * tiny, (r() - 0.5) * 3 * tiny);
    const o = orient(createOriented(body), up);
    const volume = whole * (0.01 + 0.98 * r());
    const h = solveLevel(o, cells, volume, out);
    const below = measureCells(o, cells, h, out).volume;
    const truth = exactVolume(model, cells, up, body.origin, h);
    const miss = Math.abs(toNumber(truth - exact(volume))) / whole;
    worstVolume = Math.max(worstVolume, miss);
    // The level's own error: what is missing, spread over the free surface.
    worstLevel = Math.max(worstLevel, Math.abs(toNumber(truth - exact(volume))) / out.area);
    const down = orient(createOriented(body), [-up[0], -up[1], -up[2]]);
    const above = measureCells(down, cells, -h, out).volume;
    worstSum = Math.max(worstSum, Math.abs(below + above - whole) / whole);
    expect(miss, `seed ${SEED + i}`).toBeLessThanOrEqual(1e-12);
  }
  const against = `arithmetic that does not round, ${PANS} random pans`;
  tellWorst('Volume under a level, as a share of the whole', worstVolume, 1e-12, '1', against);
  tellWorst('Level for a volume', worstLevel, 1e-9, 'mm', against);
  tellWorst('Oil below and above a level, together, as a share of the whole', worstSum, 1e-12, '1', against);
  expect(worstLevel).toBeLessThanOrEqual(1e-9);
  expect(worstSum).toBeLessThanOrEqual(1e-12);
});

import { beforeAll, expect, it } from 'vitest';
import { seedOr } from '../dice.js';
import { randomFrom } from '../random.js';
import { killCuts } from './killed-cut.js';
import { buildPan, example, pan } from './pan-command.js';

const SEED = seedOr(515);
const COUNT = 2;

beforeAll(buildPan);

// 500 of them are made by the nightly command.
it(`a cut that is killed leaves the old set or the new one, edits kept (${COUNT} kills, seed ${SEED})`, async () => {
  const { runs, editsKept, recovered } = await killCuts(pan, example('two-wings'), COUNT, randomFrom(SEED));
  expect(runs.map(({ end }) => end).filter((end) => end !== 'old' && end !== 'new')).toEqual([]);
  expect([editsKept, recovered]).toEqual([true, true]);
});

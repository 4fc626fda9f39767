import { beforeAll, expect, it } from 'vitest';
import { seedOr } from '../dice.js';
import { randomFrom } from '../random.js';
import { killCuts } from './killed-cut.js';
import { buildPan, pan } from './pan-command.js';

const SEED = seedOr(515);
const COUNT = 3;

beforeAll(buildPan);

// 500 of them are made by the nightly command; one over each start here.
it(`a cut that is killed leaves the old set or the new one, edits kept (${COUNT} kills, seed ${SEED})`, async () => {
  const runs = await killCuts(pan, COUNT, randomFrom(SEED));
  expect(runs.map(({ wrong }) => wrong)).toEqual(['', '', '']);
  expect(runs.filter(({ midWrite }) => midWrite).length).toBeGreaterThan(0);
});

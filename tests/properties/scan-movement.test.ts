import { expect, test } from 'vitest';
import { seedOr } from '../dice.js';
import { tryScans } from '../scan-trial.js';

// Against every pair of triangles; the same by the thousand is tests/nightly/scan-movements.ts.
test('no random movement of a random pan comes nearer to a random scan than the worst says', () => {
  const seed = seedOr(1848);
  const { faults, movements, apart, restOff, clear, slack } = tryScans(seed, 100, 60);
  expect(faults).toEqual([]);
  expect(movements).toBe(100);
  expect(apart).toBeGreaterThan(50);
  expect(restOff, `seed ${seed}`).toBeLessThan(1e-6);
  // Nor is the worst more cautious than it need be: a place as near is found by looking.
  expect(clear).toBeGreaterThan(0);
  expect(slack, `seed ${seed}`).toBeLessThan(0.1);
});

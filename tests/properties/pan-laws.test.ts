import { expect, test } from 'vitest';
import { seedOr } from '../dice.js';
import { LAWS, type Law } from '../pan-law.js';
import { tryPans } from '../pan-trial.js';
import { tellWorst } from '../published/accuracy.js';
import { randomDesign } from '../random-design.js';
import { shrunk } from '../shrink-design.js';

const SEED = seedOr(120_000);
const PANS = 2000;
/** Each pan stands under one law, each law over as many pans; the long run puts every pan under all. */
const inTurn = (seed: number): readonly Law[] => [LAWS[seed % LAWS.length] as Law];

test(`${PANS} random pans keep ${LAWS.length} laws in turn (seed ${SEED})`, () => {
  const { refused, worst, failures } = tryPans(SEED, PANS, inTurn);
  expect(failures).toEqual([]);
  expect(refused).toBeLessThan(PANS / 5);
  for (const law of LAWS) {
    const found = worst.get(law.name) ?? Number.NaN;
    tellWorst(`Law: ${law.name}`, found, law.allowed, law.unit, `${PANS} random pans, the laws in turn`);
    expect(found, law.name).toBeLessThanOrEqual(law.allowed);
  }
  // Forty seconds alone; a busy machine is given more than the usual two minutes.
}, 600_000);

test('a pan that breaks a law is shrunk to what breaks it', () => {
  const walls = (d: ReturnType<typeof randomDesign>): number =>
    d.baffles.filter((b) => b.kind === 'wall').length;
  const seed = Array.from({ length: 200 }, (_, i) => i).find((s) => {
    const d = randomDesign(s);
    return walls(d) === 2 && d.baffles.length === 3 && d.pan.wings.length > 0;
  });
  const plain = shrunk(randomDesign(seed ?? Number.NaN), (d) => walls(d) > 0);
  expect(plain.baffles).toHaveLength(1);
  expect(plain.pan.wings).toHaveLength(0);
  expect(plain.pan.floor.flat().every((value) => value % 10 === 0)).toBe(true);
});

import { expect, it } from 'vitest';
import { exampleText } from '../design-text.js';
import { seedOr } from '../dice.js';
import { randomFrom } from '../random.js';
import { judgedDesign } from './mutated-design.js';
import { mutatedText } from './mutated-text.js';

const SEED = seedOr(20260);
const COUNT = 150;

// 50,000 of them are read by the nightly command; these few keep the everyday run honest.
it(`${COUNT} mutated design files are read or refused with a place, in 2 s each (seed ${SEED})`, async () => {
  const texts = ['demo', 'two-wings', 'two-piece', 'inches'].map(exampleText);
  let refused = 0;
  for (let i = 0; i < COUNT; i++) {
    const next = randomFrom(SEED + i);
    const text = mutatedText(texts[i % texts.length] as string, next);
    const { end, why, ms } = await judgedDesign(text, i % 50 === 0);
    expect(end, `seed ${SEED + i}: ${why}`).not.toBe('wrong');
    expect(ms, `seed ${SEED + i}`).toBeLessThan(2000);
    if (end === 'refused') refused++;
  }
  expect(refused).toBeGreaterThan(COUNT / 3);
});

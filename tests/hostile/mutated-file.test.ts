import { dirname } from 'node:path';
import { expect, it } from 'vitest';
import { seedOr } from '../dice.js';
import { randomFrom } from '../random.js';
import { fileSources } from './file-sources.js';
import { judgedFile, KINDS } from './mutated-file.js';
import { example } from './pan-command.js';

const SEED = seedOr(30_300);
const COUNT = 60;
const sources = fileSources(dirname(example('demo')));

// 10,000 of each are read by the nightly command; these few keep the everyday run honest.
it.each(KINDS)(
  `${COUNT} mutated files are read or refused with advice, in 2 s each (%s, seed ${SEED})`,
  async (kind) => {
    const ends = new Map<string, number>();
    for (let i = 0; i < COUNT; i++) {
      const { end, why, ms } = await judgedFile(kind, sources, randomFrom(SEED + i));
      expect(end, `seed ${SEED + i}: ${why}`).not.toBe('wrong');
      expect(ms, `seed ${SEED + i}`).toBeLessThan(2000);
      ends.set(end, (ends.get(end) ?? 0) + 1);
    }
    expect(ends.get('refused')).toBeGreaterThan(COUNT / 5);
    expect(ends.get('read')).toBeGreaterThan(0);
  },
);

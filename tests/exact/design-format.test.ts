import { inNewestFormat, newerFormat } from 'pan-core/design/format.js';
import { expect, it } from 'vitest';
import { changed, problemsIn, SMALLEST } from '../design-text.js';

it('a newer format is the only thing complained of, at its place', async () => {
  const problems = await problemsIn(
    changed(changed(SMALLEST, 'format: 1', 'format: 7'), 'crankcase_top', 'a_key_of_the_future'),
  );
  expect(problems).toHaveLength(1);
  expect(problems[0]).toMatchObject({ path: ['format'], line: 1, column: 9, value: 7, limit: 1 });
  expect(problems[0]?.message).toContain('newer');
});

it.each([1, 0, -1, 1.5, '2', null, undefined])('%s is not newer than 1', (format) => {
  expect(newerFormat({ format })).toBeNull();
});

// Invented formats: 1 called a key fill, 2 called it poured, 3 keeps it in a group.
const steps = {
  1: ({ fill, ...rest }: Readonly<Record<string, unknown>>) => ({ ...rest, poured: fill }),
  2: ({ poured, ...rest }: Readonly<Record<string, unknown>>) => ({ ...rest, oil: { poured } }),
};

it('an older format is rewritten step by step, and the file itself is not touched', () => {
  const old = Object.freeze({ format: 1, fill: '5 L', title: 'x' });
  expect(inNewestFormat(old, 3, steps)).toEqual({ format: 3, title: 'x', oil: { poured: '5 L' } });
  expect(inNewestFormat({ format: 2, poured: 1 }, 3, steps)).toEqual({ format: 3, oil: { poured: 1 } });
  expect(inNewestFormat({ format: 3, fill: 1 }, 3, steps)).toEqual({ format: 3, fill: 1 });
  expect(inNewestFormat({ format: 0 }, 3, steps)).toEqual({ format: 0 });
  expect(inNewestFormat(['format'], 3, steps)).toEqual(['format']);
});

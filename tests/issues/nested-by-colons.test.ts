import { expect, test } from 'vitest';
import { problemsIn } from '../design-text.js';

// The parser goes one call deeper for each and overflowed the stack.
test.each([
  ['with brackets left over', `a: 1\ntop{a: 1${'}{a: 1'.repeat(2000)}`],
  ['alone', `a: 1\n${'b: '.repeat(4000)}`],
])('thousands of keys in one line are refused with their place, %s', async (_, text) => {
  const [problem] = await problemsIn(text);
  expect(problem?.message).toContain('nested more than 20 deep');
  expect([problem?.code, problem?.line]).toEqual(['input-syntax', 2]);
});

test('brackets closed before they are opened do not allow as many more', async () => {
  const [problem] = await problemsIn(`a: 1\n${'}'.repeat(3000)}${'['.repeat(3000)}`);
  expect(problem?.message).toContain('nested more than 20 deep');
});

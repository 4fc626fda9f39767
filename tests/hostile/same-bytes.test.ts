import { beforeAll, expect, it } from 'vitest';
import { buildPan, example, pan } from './pan-command.js';
import { digestOf, HABITS, type Written } from './same-bytes.js';

beforeAll(buildPan);

const quick: readonly Written[] = [
  { name: 'check', args: () => ['check', example('demo'), '--json'] },
  { name: 'check, for people', args: () => ['check', example('inches')] },
  { name: 'dipstick', args: (to) => ['dipstick', example('demo'), '--svg', `${to}/stick.svg`] },
];

// The other commands, and other versions of node, are asked by the nightly command.
it.each(quick)('$name writes the same bytes in every zone and language', (written) => {
  const found = HABITS.map(({ name, env }) => digestOf(pan, written, { name, node: process.execPath, env }));
  expect(new Set(found).size, JSON.stringify(found)).toBe(1);
});

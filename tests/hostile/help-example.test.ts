import { fileURLToPath } from 'node:url';
import { commands } from 'pan-cli/commands/list.js';
import { beforeAll, expect, test } from 'vitest';
import { furnish, typed } from './help-example.js';
import { buildPan, inFolder, STACK } from './pan-command.js';

const cli = fileURLToPath(new URL('../../packages/pan-cli', import.meta.url));

beforeAll(buildPan);

/** Those that take longer, ask somebody, or serve until they are ended: the nightly command types them all. */
const LEFT_TO_THE_NIGHT = /^pan (limits|surge|fit|size|cut|report|view|worksheet)|^pan new my-pan.yaml$/;
const lines = commands
  .flatMap(({ examples }) => examples.map(([line]) => line))
  .filter((line) => !LEFT_TO_THE_NIGHT.test(line) && !line.startsWith('pan inspect'));

test(`${lines.length} examples of the help run as they stand, typed into a shell`, () => {
  expect(lines.length).toBeGreaterThanOrEqual(9);
  for (const line of lines) {
    const { code, err } = inFolder((folder) => {
      furnish(folder, cli);
      return typed(line.replace(/^pan new my-pan/, 'pan new other-pan'), folder);
    });
    expect([code, line], err).toEqual([0, line]);
    expect(err).not.toMatch(STACK);
  }
});

// A drawing that does not say its unit is not fit to cut, so that these may end with 1; 2 would be a wrong word.
test('so do those that look at a drawing', () => {
  inFolder((folder) => {
    furnish(folder, cli);
    for (const [line] of commands.find(({ name }) => name === 'inspect')?.examples ?? []) {
      const { code, out } = typed(line, folder);
      expect([0, 1]).toContain(code);
      expect(out).toContain('RULES');
    }
  });
});

import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { commands } from 'pan-cli/commands/list.js';
import { beforeAll, expect, test } from 'vitest';
import { parse, stringify } from 'yaml';
import { buildPan, inFolder, runPan } from './pan-command.js';

const root = fileURLToPath(new URL('../../', import.meta.url));
const readme = readFileSync(join(root, 'README.md'), 'utf8');

beforeAll(buildPan);

const fenced = [...readme.matchAll(/^```(\w*)\n([\s\S]*?)^```$/gm)];
const blocks = (language: string): readonly string[] =>
  fenced.filter((match) => match[1] === language).map((match) => match[2] as string);

const lines = blocks('sh')
  .flatMap((block) => block.split('\n'))
  .filter((line) => line.startsWith('pan '));

const words = (line: string): string[] =>
  (line.match(/"[^"]*"|\S+/g) ?? []).slice(1).map((word) => word.replaceAll('"', ''));

type Keys = { [key: string]: unknown };
const isKeys = (value: unknown): value is Keys =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

const merged = (into: Keys, from: Keys): Keys => {
  const result: Keys = { ...into };
  for (const [key, value] of Object.entries(from)) {
    const old = result[key];
    result[key] = isKeys(old) && isKeys(value) ? merged(old, value) : value;
  }
  return result;
};

test('the walk of the README goes as it is told', () => {
  inFolder((folder) => {
    // The walk keeps its files beside the checkout; here that is a folder of the test's own.
    const run = (start: string) =>
      runPan(
        words(lines.find((line) => line.startsWith(start)) as string).map((word) =>
          word.startsWith('../') ? join(folder, word.slice(3)) : word,
        ),
      );
    const file = join(folder, 'my-pan.yaml');
    expect(run('pan new').code).toBe(0);

    const before = run('pan check');
    expect(before.code).toBe(1);
    const shown = blocks('').find((block) => block.startsWith('NOT READY TO CUT')) as string;
    // What is shown is shortened and may be worded better later; what it teaches must stay true.
    for (const taught of [/^NOT READY TO CUT/, /^FIRST +FAIL +[^:]+/m, /^NEXT +UNKNOWN +[^:]+/m]) {
      expect(before.out.match(taught)?.[0]).toBe(shown.match(taught)?.[0]);
    }

    writeFileSync(
      file,
      stringify(merged(parse(readFileSync(file, 'utf8')), parse(blocks('yaml')[0] as string))),
    );
    const after = run('pan check');
    expect(after.out).toMatch(/^READY FOR THE MOCK-UP, WITH WARNINGS/);
    expect(after.code).toBe(0);

    expect(run('pan level').code).toBe(0);

    expect(run('pan cut').code).toBe(0);
    const named = [...readme.matchAll(/`([0-9][\w-]*\/|00-read-first\.txt|manifest\.json)`/g)].map(
      (match) => match[1] as string,
    );
    expect(named.length).toBeGreaterThanOrEqual(7);
    for (const name of named)
      expect([name, existsSync(join(folder, 'my-pan-cut', name))]).toEqual([name, true]);
  });
});

test('every command has its row, and no row is of a command that does not exist', () => {
  const rows = [...readme.matchAll(/^\| `pan (\w+)/gm)].map((match) => match[1]);
  expect([...rows].sort()).toEqual(commands.map(({ name }) => name).sort());
});

test.each([...readme.matchAll(/\]\(([^)#:]+)\)/g)].map((match) => match[1] as string))(
  '%s, linked from the README, is there',
  (path) => {
    expect(existsSync(join(root, path))).toBe(true);
  },
);

test('the scripts named in the README are there', () => {
  const { scripts } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'));
  const named = [...readme.matchAll(/npx -y pnpm@10(?: -s)? (\w+)/g)].map((match) => match[1] as string);
  expect(named.length).toBeGreaterThanOrEqual(3);
  for (const name of named) expect(Object.keys(scripts)).toContain(name);
});

import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { buildPan, example, inFile, inFolder, names, type Ran, runPan, STACK } from './pan-command.js';

const demo = readFileSync(example('demo'), 'utf8');
const lineOf = (text: string, part: string): number => text.slice(0, text.indexOf(part)).split('\n').length;

/** The demo with one piece of it changed, and the line it stands on. */
const changed = (from: string, to: string): readonly [text: string, line: number] => {
  if (!demo.includes(from)) throw new Error(`the demo has no ${from}`);
  return [demo.replace(from, () => to), lineOf(demo, from)];
};

const expectRefused = ({ code, out, err }: Ran): void => {
  expect(err).not.toMatch(STACK);
  expect(out).toBe('');
  expect(err.trim()).not.toBe('');
  expect(code).toBe(2);
};

beforeAll(buildPan);

describe.each(['check', 'level', 'cut'])('pan %s', (command) => {
  const more = command === 'cut' ? ['--out', 'set'] : [];

  test.each([
    ['empty', '', '', 'empty'],
    ['only blanks', ' \n\n\t\n', '', 'empty'],
    ['binary', Uint8Array.from([0x7f, 0x45, 0x0a, 0x46, 0, 1, 2, 0xff]), ':2:2', 'binary'],
    ['not UTF-8', Uint8Array.from([0x0a, 0x74, 0xe9, 0x0a]), ':2:1', 'UTF-8'],
    ['larger than any design', `title: ${'x'.repeat(2_000_000)}`, '', 'larger'],
  ])('refuses a file that is %s, and says so', (_, content, place, says) => {
    inFile(content, (file, folder) => {
      const ran = runPan([command, file, ...more], folder);
      expectRefused(ran);
      expect(ran.err).toContain(says);
      expect(ran.err.startsWith(`${file}${place}: `)).toBe(true);
      expect(names(folder)).toEqual(['pan.yaml']);
    });
  });

  test('refuses a file that is not there, and a folder', () => {
    inFolder((folder) => {
      for (const [file, says] of [
        [join(folder, 'none.yaml'), 'no such file'],
        [folder, 'folder'],
      ] as const) {
        const ran = runPan([command, file, ...more], folder);
        expectRefused(ran);
        expect(ran.err).toContain(says);
      }
      expect(names(folder)).toEqual([]);
    });
  });
});

const cases: readonly (readonly [string, string, string, RegExp])[] = [
  ['a tab for a space', '  rail:', '\trail:', /tab/],
  ['a unit of another kind', 'stroke: 96', 'stroke: 96 L', /length/],
  ['an unknown unit', 'stroke: 96', 'stroke: 96 furrows', /furrows/],
  ['a fraction that could be a subtraction', 'stroke: 96', 'stroke: 5-1/2 in', /5 1\/2 in/],
  ['a quart of neither country', 'fill: 7.2 L', 'fill: 7 qt', /US qt.*imp qt/],
  ['grams for acceleration', 'braking: 1.1 g', 'braking: 1.1 kg', /acceleration/],
  ['a number that is none', 'stroke: 96', 'stroke: .nan', /finite/],
  ['a number without end', 'stroke: 96', 'stroke: 1e999', /finite/],
  ['the word NaN', 'stroke: 96', 'stroke: NaN', /finite|number/],
  ['a negative depth', '[320, 165]', '[320, -165]', /-165/],
  ['a key misspelled', 'stroke:', 'stork:', /stroke/],
  ['a key twice', 'title:', 'format: 1\ntitle:', /twice/],
  ['a decimal comma', 'stroke: 96', 'stroke: "96,5"', /comma/],
  ['a list for a number', 'stroke: 96', 'stroke: [96]', /length/],
  ['an alias', 'stroke: 96', 'stroke: *other', /alias|anchor/i],
];

test.each(cases)('%s is refused at its place', (_, from, to, says) => {
  const [text, line] = changed(from, to);
  inFile(text, (file, folder) => {
    const ran = runPan(['check', file], folder);
    expectRefused(ran);
    const first = ran.err.split('\n')[0] ?? '';
    expect(first).toMatch(/^.*pan\.yaml:\d+:\d+: /);
    const place = ran.err.split('\n').map((one) => Number(/pan\.yaml:(\d+):\d+: /.exec(one)?.[1]));
    expect(place.some((at) => Math.abs(at - line) <= 1)).toBe(true);
    expect(ran.err).toMatch(says);
    expect(names(folder)).toEqual(['pan.yaml']);
  });
});

test('a title of a million characters is refused without being shown', () => {
  const [text] = changed('title:', `title: ${'x'.repeat(900_000)} #`);
  inFile(text, (file) => {
    const ran = runPan(['check', file]);
    expectRefused(ran);
    expect(ran.err).toMatch(/title/);
    expect(ran.err.length).toBeLessThan(1000);
  });
});

test('an error text carries no escape code from the file to the terminal', () => {
  const [text] = changed('stroke: 96', 'stroke: "\\e[2Jcleared\\a"');
  inFile(text, (file) => {
    const { code, err } = runPan(['check', file]);
    expect(code).toBe(2);
    expect(err).toContain('cleared');
    expect([...err].every((letter) => letter === '\n' || !/\p{Cc}/u.test(letter))).toBe(true);
  });
});

test('every fault is told at once, each with its own place', () => {
  const text = demo
    .replace('stroke: 96', 'stroke: -96')
    .replace('fill: 7.2 L', 'fill: 7 qt')
    .replace('bore: 22', 'boar: 22');
  inFile(text, (file) => {
    const { code, err } = runPan(['check', file]);
    expect(code).toBe(2);
    const places = new Set(err.match(/pan\.yaml:\d+:\d+/g));
    expect(places.size).toBeGreaterThanOrEqual(3);
    for (const key of ['engine.crank.stroke', 'oil.fill', 'pickup.boar']) expect(err).toContain(key);
  });
});

test('with --json the same faults arrive as JSON, and as text beside it', () => {
  const [text, line] = changed('stroke: 96', 'stroke: 5-1/2 in');
  inFile(text, (file) => {
    const { code, out, err } = runPan(['check', file, '--json']);
    expect(code).toBe(2);
    const { errors } = JSON.parse(out);
    expect(errors).toHaveLength(1);
    expect(errors[0]).toMatchObject({
      code: 'input-type',
      file,
      line,
      key: 'engine.crank.stroke',
      found: '5-1/2 in',
    });
    expect(errors[0].message).not.toContain(file);
    expect(err).toContain(`${file}:${line}:`);
  });
});

test.each([
  [['level', example('demo'), '--braking', 'abc'], '--braking abc'],
  [['level', example('demo'), '--braking', '-1'], 'between 0 and 5 g'],
  [['level', example('demo'), '--braking', 'NaN'], 'finite'],
  [['level', example('demo'), '--braking', '99'], 'between 0 and 5 g'],
  [['level', example('demo'), '--braking', '1', '--accelerating', '1'], 'opposite ways'],
  [['level', example('demo'), '--in-pan', '5 qt'], 'US qt or imp qt'],
  [['level', example('demo'), '--in-pan', '5', '--units', 'in'], 'unit'],
  [['level', example('demo'), '--in-pan', '90 L'], 'do not fit'],
  [['level', example('demo'), '--in-pan', '-1 L'], 'between 0 and 100 L'],
  [['check', example('demo'), '--braking', '1'], 'no option --braking'],
  [['chekc', example('demo')], 'pan check'],
  [['cut', example('demo')], '--out'],
  [[], 'No command'],
])('pan %j is refused', (args, says) => {
  const ran = runPan(args);
  expectRefused(ran);
  expect(ran.err).toContain(says);
});

import { readArguments } from 'pan-cli/commands/arguments.js';
import { commands, sharedOptions } from 'pan-cli/commands/list.js';
import { PanError, type Problem } from 'pan-core';
import { expect, test } from 'vitest';

const ALL = commands.map(({ name }) => name).join(', ');

const read = (...argv: string[]) => readArguments(argv, commands, sharedOptions);

const problems = (...argv: string[]): readonly Problem[] => {
  try {
    read(...argv);
    return [];
  } catch (error) {
    if (!(error instanceof PanError)) throw error;
    return error.problems;
  }
};

test.each([
  ['check', 'pan.yaml'],
  ['check', 'pan.yaml', '--json', '--units', 'in'],
  ['check', '--units=in', 'pan.yaml'],
  ['level', 'pan.yaml', '--in-pan', '5 L', '--braking', '-0.5', '--left-turn', '.3'],
  ['level', '--in-pan=5 US qt', 'pan.yaml'],
  ['check', '--', '--odd-name.yaml'],
  ['check', '--', '---'],
  ['new', 'my-pan.yaml', '--nose-up', '-3 deg', '--stroke', '-96'],
  ['surge', 'a.yaml', '--left=-Lat', '--time=t=s'],
  ['check', '12'],
  ['check', '0x10'],
  ['new', 'my-pan.yaml', '--from', 'demo', '--replace'],
])('%s %s … is in order', (...argv) => {
  expect(problems(...argv)).toEqual([]);
});

test.each([
  [[], 'No command was given', ALL],
  [['--json'], 'No command was given', ALL],
  [['chekc', 'a.yaml'], 'no command `chekc`', 'pan check'],
  [['frobnicate'], 'no command `frobnicate`', ALL],
  [['check'], 'needs a design file', 'pan check my-pan.yaml'],
  [['check', ''], 'needs a design file', 'pan check my-pan.yaml'],
  [['check', 'a.yaml', 'b.yaml'], 'takes one file and got 2', 'quotes'],
  [['check', 'a.yaml', '--jsno'], 'no option --jsno', '--json'],
  [['check', 'a.yaml', '--colour-of-car'], 'no option --colour-of-car', 'pan check --help'],
  [['check', 'a.yaml', '-j'], 'no option --j', ''],
  [['check', 'a.yaml', '--__proto__', 'x'], 'no option --__proto__', 'pan check --help'],
  [['check', 'a.yaml', '--constructor'], 'no option --constructor', 'pan check --help'],
  [['check', 'a.yaml', '--json.deep', '1'], 'no option --json.deep', ''],
  [['check', 'a.yaml', '--no-json'], 'no option --no-json', ''],
  [['check', 'a.yaml', '--json=yes'], '--json takes no value', '--json alone'],
  [['check', 'a.yaml', '--units'], '--units needs a value', '--units VALUE'],
  [['check', 'a.yaml', '--units='], '--units needs a value', '--units VALUE'],
  [['check', 'a.yaml', '--units', 'cm'], '--units must be one of mm, in', 'mm'],
  [['level', 'a.yaml', '--in-pan', '5', 'L'], 'takes one file and got 2', '"5 L"'],
  [['check', 'a.yaml', '---'], 'no option --', 'pan check --help'],
  [['check', 'a.yaml', '---json'], 'no option --', '--json'],
  [['check', 'a.yaml', '--_', 'b.yaml'], 'no option --_', ''],
  [['check', 'a.yaml', '--_=b.yaml'], 'no option --_', ''],
  [['check', '--jsno', 'a.yaml'], 'no option --jsno', '--json'],
  [['cut', 'a.yaml', '--out', '--replace'], '--out needs a value', '--out VALUE'],
  [['level', 'a.yaml', '--braking', '1', '--braking', '2'], '--braking is given more than once', 'once'],
  [['cut', 'a.yaml', '--out', 'a', '--out'], '--out needs a value', '--out VALUE'],
  [['check', 'a.yaml', '--json=true'], '--json takes no value', '--json alone'],
  [['level', 'a.yaml', '--braking=1', '--braking', '2'], '--braking is given more than once', 'once'],
  [['check', 'a.yaml', '--json', '--json'], '--json is given more than once', 'once'],
] as const)('pan %j is refused', (argv, says, advice) => {
  const [first, ...rest] = problems(...argv);
  expect(first?.code).toBe('input-option');
  expect(first?.message).toContain(says);
  expect(first?.advice).toContain(advice);
  expect(rest).toEqual([]);
});

test('values arrive as they were typed, with and without an equals sign', () => {
  const { command, given } = read('level', '--in-pan', '5 L', 'a b.yaml', '--braking=-0.5', '--json');
  expect(command.name).toBe('level');
  expect(given).toEqual({ file: 'a b.yaml', options: { 'in-pan': '5 L', braking: '-0.5', json: true } });
  expect(read('check', '--', '--json').given).toEqual({ file: '--json', options: {} });
});

test('numbers stay the text they were typed as', () => {
  const { given } = read('level', '0010', '--braking', '1e-1', '--in-pan=0x5', '--left-turn', '1_000');
  expect(given.file).toBe('0010');
  expect(given.options).toEqual({ braking: '1e-1', 'in-pan': '0x5', 'left-turn': '1_000' });
});

test('every missing value is told, and an option is never taken for one', () => {
  const said = problems('cut', 'a.yaml', '--out', '--paper', '--next').map(({ message }) => message);
  expect(said).toEqual(['`pan cut` has no option --next.', '--out needs a value.', '--paper needs a value.']);
});

test('all that is wrong is said at once', () => {
  const said = problems('check', 'a.yaml', '--jsno', '--units', 'cm', '--json', '--json');
  expect(said.map((problem) => problem.message)).toHaveLength(3);
});

test('an option of another command is no option of this one', () => {
  expect(problems('check', 'a.yaml', '--braking', '1')[0]?.message).toContain('no option --braking');
});

test.each(commands)('$name: both examples are commands it accepts', ({ examples }) => {
  expect(examples).toHaveLength(2);
  for (const [line] of examples) {
    const [pan, ...words] = line.replace(/ >.*$/, '').match(/"[^"]*"|\S+/g) ?? [];
    expect(pan).toBe('pan');
    expect(problems(...words.map((word) => word.replaceAll('"', '')))).toEqual([]);
  }
});

import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { askRows } from 'pan-cli/commands/ask-worksheet.js';
import { answerLines, answerLists, setAnswers, typedAnswer } from 'pan-cli/commands/worksheet-answers.js';
import { parseYaml } from 'pan-cli/read/parse-yaml.js';
import { worksheetParts } from 'pan-core';
import { beforeAll, expect, test } from 'vitest';
import { buildPan, inFolder, runPan } from './pan-command.js';

beforeAll(buildPan);

const ANSWERS = `title: From the garage
engine.rail.length: 690
engine.rail.width: 250
engine.rail.seen_from: below
engine.crank.centre_above_rail: 62
engine.crank.stroke: 96
engine.crank.big_end_reach: 41
engine.crank.throws: [70, 172, 274, 376, 478, 580]
engine.tilt.nose_up: 3
engine.tilt.lean_left: 0
oil.pump: 45
chassis.ground: -283
`;
const REST = ['--shallow', '45', '--sump-length', '320', '--sump-depth', '160'];

const attempt = (answers: string, look: (out: string, result: ReturnType<typeof runPan>) => void) => {
  inFolder((folder) => {
    writeFileSync(join(folder, 'answers.yaml'), answers);
    const out = join(folder, 'mine.yaml');
    look(out, runPan(['new', out, '--from-worksheet', '--answers', join(folder, 'answers.yaml'), ...REST]));
  });
};

test('a filled worksheet becomes a design with those answers, without a terminal', () => {
  attempt(ANSWERS, (out, { code }) => {
    expect(code).toBe(0);
    expect(readFileSync(out, 'utf8')).toContain('From the garage');
    const level = JSON.parse(runPan(['check', out, '--json']).out);
    expect(level.unknown).toEqual([]);
  });
});

test.each([
  ['engine.rail.lenght: 690\n', /lenght is no row of the worksheet/],
  ['- 1\n', /holds no lines of key: value/],
  [ANSWERS.replace('stroke: 96', 'stroke: 96 kg'), /--stroke/],
  [ANSWERS.replace('below', 'sideways'), /seen_from/],
  [
    `${ANSWERS}chassis.obstacles[2].name: bonnet\n`,
    /obstacles\[2\] is answered and chassis.obstacles\[1\] is not/,
  ],
  [`${ANSWERS}chassis.obstacles[].name: bonnet\n`, /is no row of the worksheet/],
  [`${ANSWERS}chassis.obstacles[0].name: bonnet\n`, /counts from 1/],
  [`${ANSWERS}chassis.obstacles[999999].name: bonnet\n`, /to 100 at most/],
  [`${ANSWERS}chassis.obstacles[1].name: bonnet\n`, /needs one of: box, rod, plane, prism, scan/],
  [`${ANSWERS}chassis.obstacles[1].__proto__: {}\n`, /is no row of the worksheet/],
])('%j writes nothing', (answers, says) => {
  attempt(answers, (out, { code, err }) => {
    expect(code).toBe(2);
    expect(err).toMatch(says);
    expect(existsSync(out)).toBe(false);
  });
});

const parts = worksheetParts('mm');
const rows = parts.flatMap((part) => part.rows);
const LISTS = `chassis.obstacles[1].name: crossmember
chassis.obstacles[1].box: [[356, -400, -180], [450, 400, -67]]
chassis.obstacles[1].clear: 12
chassis.obstacles[2].name: bonnet
chassis.obstacles[2].plane.at: [300, 0, 690]
chassis.obstacles[2].plane.facing: down
chassis.obstacles[3].name: channel
chassis.obstacles[3].prism.along: x
chassis.obstacles[3].prism.profile: [[300, -50], [340, -50], [340, 60]]
chassis.obstacles[3].prism.from: 0
chassis.obstacles[3].prism.to: 900
engine.carries[1].name: intake
engine.carries[1].box: [[80, 120, 200], [620, 330, 600]]
engine.inside[1].name: girdle bolt
engine.inside[1].rod: [[200, 20, -10], [200, 20, 40]]
engine.inside[1].diameter: 10
`;

test('things of a list come from the answers by their numbers, each in its place of the file', () => {
  attempt(ANSWERS + LISTS, (out, { code }) => {
    expect(code).toBe(0);
    const { chassis, engine } = parseYaml(readFileSync(out, 'utf8')).raw as Record<
      string,
      Record<string, unknown>
    >;
    expect(chassis?.obstacles).toEqual([
      {
        name: 'crossmember',
        box: [
          [356, -400, -180],
          [450, 400, -67],
        ],
        clear: 12,
      },
      { name: 'bonnet', plane: { at: [300, 0, 690], facing: 'down' } },
      {
        name: 'channel',
        prism: {
          along: 'x',
          profile: [
            [300, -50],
            [340, -50],
            [340, 60],
          ],
          from: 0,
          to: 900,
        },
      },
    ]);
    expect(engine?.inside).toEqual([
      {
        name: 'girdle bolt',
        rod: [
          [200, 20, -10],
          [200, 20, 40],
        ],
        diameter: 10,
      },
    ]);
  });
});

test('--set answers any row as often as needed, before the file, and makes the same design', () => {
  inFolder((folder) => {
    const set = (ANSWERS + LISTS)
      .trim()
      .split('\n')
      .flatMap((line) => ['--set', line.replace(': ', '=')]);
    const [one, two] = [join(folder, 'one.yaml'), join(folder, 'two.yaml')];
    expect(runPan(['new', one, '--from-worksheet', ...set, ...REST]).code).toBe(0);
    writeFileSync(join(folder, 'answers.yaml'), (ANSWERS + LISTS).replace('stroke: 96', 'stroke: 80'));
    const answers = ['--answers', join(folder, 'answers.yaml'), '--set', 'engine.crank.stroke=96'];
    expect(runPan(['new', two, '--from-worksheet', ...answers, ...REST]).code).toBe(0);
    expect(readFileSync(two, 'utf8')).toBe(readFileSync(one, 'utf8'));
    for (const wrong of [
      ['--set', 'engine.rail.length'],
      ['--set', ''],
      ['--set', 'a=1'],
      ['--set', 'title=a', '--set', 'title=b'],
    ])
      expect(runPan(['new', join(folder, 'x.yaml'), '--from-worksheet', ...wrong, ...REST]).code).toBe(2);
    expect(existsSync(join(folder, 'x.yaml'))).toBe(false);
  });
}, 60_000);

test('asks every row in the order of the worksheet, a list until Enter alone, and every prompt has its --set', async () => {
  const asked: string[] = [];
  // Two obstacles, a square one and, two pages on, a flat one; one scan with one point of two in it.
  const things: Readonly<Record<string, string>> = {
    'chassis.obstacles[1].name': 'crossmember',
    'chassis.obstacles[1].box': '356 -400 -180 450 400 -67',
    'chassis.obstacles[2].name': 'bonnet',
    'chassis.obstacles[2].plane.at': '300, 0, 690',
    'chassis.obstacles[3].name': 'bay',
    'chassis.obstacles[3].placement.matches[1].in_scan': '1 2 3',
  };
  // The first page is done with crossmember, the second with bonnet.
  const ended = new Set<string>();
  const answers = await askRows(
    parts,
    new Map(),
    () => undefined,
    async (_about, key) => {
      asked.push(key);
      const next = /obstacles\[[23]\]\.name$/.test(key);
      if (next && !ended.has(key)) {
        ended.add(key);
        return '';
      }
      return things[key] ?? '';
    },
  );
  expect(Object.fromEntries(answers)).toEqual({
    'chassis.obstacles[1].name': 'crossmember',
    'chassis.obstacles[1].box': [
      [356, -400, -180],
      [450, 400, -67],
    ],
    'chassis.obstacles[2].name': 'bonnet',
    'chassis.obstacles[2].plane.at': [300, 0, 690],
    'chassis.obstacles[3].name': 'bay',
    'chassis.obstacles[3].placement.matches[1].in_scan': [1, 2, 3],
  });
  // Every kind of thing is asked for its room and its plus-or-minus.
  for (const count of [1, 2, 3])
    for (const end of ['clear', 'plus_minus']) expect(asked).toContain(`chassis.obstacles[${count}].${end}`);
  expect(asked).toContain('chassis.obstacles[3].placement.matches[2].in_scan');
  const places = asked
    .map((key) => key.replace(/\[\d+\]/g, '[]'))
    .filter((key) => !key.includes('obstacles'))
    .map((key) => rows.findIndex((row) => row.key === key));
  expect(places).toEqual([...places].sort((a, b) => a - b));
  // Nothing is asked that has no flag, and nothing on the sheet goes unasked but the rest of empty lists.
  for (const key of asked) expect([...setAnswers(`${key}=1`, rows).keys()]).toEqual([key]);
  for (const { key } of rows.filter((row) => !row.key.includes('[]'))) expect(asked).toContain(key);
  // What was typed can be given again as a file.
  expect(answerLines(answers)).toContain('chassis.obstacles[2].plane.at: [300,0,690]\n');
  expect(answerLists(answers).get('chassis.obstacles')).toHaveLength(3);
});

test('what is typed goes into the boxes of its row', () => {
  const typed = (key: string, text: string): unknown =>
    typedAnswer(text, rows.find((row) => row.key === key) as (typeof rows)[number]);
  expect(typed('engine.crank.throws', '70 172 274')).toEqual([70, 172, 274]);
  expect(typed('engine.rail.length', '5 1/2 in')).toBe('5 1/2 in');
  expect(typed('dipstick.enters', '[1, 2 in, 3]')).toEqual([1, '2 in', 3]);
  expect(typed('engine.rail.seen_from', 'below')).toBe('below');
  expect(typed('title', 'a: [b')).toBe('a: [b');
});

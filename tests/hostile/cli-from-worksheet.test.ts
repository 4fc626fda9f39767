import { existsSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
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
    expect(runPan(['check', out]).out).toContain('From the garage');
    const level = JSON.parse(runPan(['check', out, '--json']).out);
    expect(level.unknown).toEqual([]);
  });
});

test.each([
  ['engine.rail.lenght: 690\n', /lenght is no row of the worksheet/],
  ['- 1\n', /holds no lines of key: value/],
  [ANSWERS.replace('stroke: 96', 'stroke: 96 kg'), /--stroke/],
  [ANSWERS.replace('below', 'sideways'), /seen_from/],
])('%j writes nothing', (answers, says) => {
  attempt(answers, (out, { code, err }) => {
    expect(code).toBe(2);
    expect(err).toMatch(says);
    expect(existsSync(out)).toBe(false);
  });
});

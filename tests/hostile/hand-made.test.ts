import { mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { readDesignFile } from 'pan-cli/read/index.js';
import { exitCodeOf } from 'pan-cli/terminal/exit-code.js';
import { PanError, type Problem } from 'pan-core';
import { afterAll, expect, test } from 'vitest';
import { changed, exampleText } from '../design-text.js';
import made from './hand-made.json' with { type: 'json' };

const demo = exampleText('demo');
const folder = mkdtempSync(join(tmpdir(), 'pan-hand-made-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

interface HandMade {
  readonly text: string;
  readonly code: string;
  readonly line: number;
}

const lineOf = (text: string, at: number): number => text.slice(0, at).split('\n').length;

const byValue: readonly HandMade[] = made.values.flatMap(({ find, key, rows }) =>
  rows.map(([value, code]) => {
    const text = changed(demo, find, `${key}: ${value}`);
    return { text, code: code as string, line: lineOf(text, demo.indexOf(find)) };
  }),
);
const byChange: readonly HandMade[] = made.changes.map(([from, to, at, code]) => {
  const text = changed(demo, from as string, to as string);
  return {
    text,
    code: code as string,
    line: lineOf(text, text.indexOf(at as string, demo.indexOf(from as string))),
  };
});
const whole: readonly HandMade[] = made.texts.map(([text, line, code]) => ({
  text: text as string,
  code: code as string,
  line: line as number,
}));
const cases = [...byValue, ...byChange, ...whole];

const refusalOf = async (text: string): Promise<Problem | string> => {
  writeFileSync(join(folder, 'pan.yaml'), text);
  try {
    await readDesignFile(join(folder, 'pan.yaml'));
    return 'it was read';
  } catch (error) {
    if (error instanceof PanError) return error.problems[0] as Problem;
    return String((error as Error).stack);
  }
};

test('there are 200 of them, no two alike', () => {
  expect(new Set(cases.map(({ text }) => text)).size).toBe(cases.length);
  expect(cases.length).toBeGreaterThanOrEqual(200);
});

test.each(cases.map((one, i) => [i, one] as const))('hand-made file %i', async (_, { text, code, line }) => {
  const begun = process.cpuUsage().user;
  const found = await refusalOf(text);
  if (typeof found === 'string') return expect(found).toBe(`refused with ${code} in line ${line}`);
  // A file that is no text at all has no line.
  expect(`${found.code} in line ${found.line ?? 1}: ${found.message}`).toMatch(
    new RegExp(`^${code} in line ${line}: .`),
  );
  expect(exitCodeOf(found.code)).toBe(2);
  expect(readdirSync(folder)).toEqual(['pan.yaml']);
  // Processor time, so that a busy machine is not blamed on the file.
  expect((process.cpuUsage().user - begun) / 1000).toBeLessThan(2000);
});

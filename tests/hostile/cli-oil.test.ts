import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { buildPan, example, folderFor, names, runPan, STACK } from './pan-command.js';
import { panHere } from './pan-here.js';

beforeAll(buildPan);

const demo = example('demo');
const widest = (text: string): number => Math.max(...text.split('\n').map((line) => [...line].length));

describe('pan limits', () => {
  const few = ['--directions', '8'];

  test('JSON keeps the contract’s keys', () => {
    const { code, out, err } = runPan(['limits', demo, '--json', ...few]);
    expect([code, err]).toEqual([0, '']);
    const { directions } = JSON.parse(out);
    expect(directions.map((d: { toward_deg: number }) => d.toward_deg)).toEqual([
      0, 45, 90, 135, 180, 225, 270, 315,
    ]);
    for (const d of directions) {
      expect(Object.keys(d).sort()).toEqual(['binding', 'held_g', 'limit_g', 'settled_g', 'toward_deg']);
      const both = [d.held_g, d.settled_g].filter((g: number | null) => g !== null);
      expect(d.limit_g).toBe(both.length === 0 ? null : Math.min(...both));
      expect(d.binding).not.toBe('');
    }
  });

  test('72 directions unless told', () => {
    const { directions } = JSON.parse(runPan(['limits', demo, '--json']).out);
    expect(directions.length).toBe(72);
  });

  test('the screen names the worst direction first and keeps to 80 columns, in either unit', async () => {
    for (const units of ['mm', 'in']) {
      const { code, out } = await panHere(['limits', demo, '--units', units, ...few]);
      expect(code).toBe(0);
      expect(out.split('\n')[0]).toMatch(/^\d\.\d\d g~\* .+ bares the mouth first/);
      expect(widest(out)).toBeLessThanOrEqual(80);
    }
  });

  test.each([
    [['--directions', '3'], /--directions must be a whole number from 4 to 720/],
    [['--directions', '7.5'], /--directions/],
    [['--directions', '1e3'], /--directions/],
    [['--directions', '99999999999'], /--directions/],
    [['--in-pan', '6 qt'], /--in-pan/],
    [['--in-pan', '99 L'], /--in-pan.*do not fit/],
    [['--in-pan', '-1'], /--in-pan/],
  ] as const)('%j is refused in words', async (more, says) => {
    const { code, out, err } = await panHere(['limits', demo, ...more]);
    expect([code, out]).toEqual([2, '']);
    expect(err).toMatch(says);
    expect(err).not.toMatch(STACK);
  });

  test('too little oil to cover the mouth is 0 in every direction', async () => {
    const { code, out } = await panHere(['limits', demo, '--json', '--in-pan', '0.1 L', ...few]);
    expect(code).toBe(0);
    for (const d of JSON.parse(out).directions) expect(d.limit_g).toBe(0);
    expect((await panHere(['limits', demo, '--in-pan', '0.1 L', ...few])).out).toMatch(
      /^The mouth is bared standing still/,
    );
  });
});

describe('drawings', () => {
  test.each(['limits', 'dipstick'])('%s --svg writes one file, and keeps one that stands there', (name) =>
    folderFor(async (folder) => {
      const file = join(folder, 'drawing.svg');
      const more = name === 'limits' ? ['--directions', '4'] : [];
      const first = await panHere([name, demo, '--svg', file, ...more]);
      expect(first.code).toBe(0);
      expect(first.err).toContain(`Wrote ${file}`);
      expect(names(folder)).toEqual(['drawing.svg']);
      const drawn = readFileSync(file, 'utf8');
      expect(drawn).toMatch(/^<\?xml [^\n]*\n<svg /);
      expect(drawn).not.toMatch(/NaN|Infinity|undefined/);

      writeFileSync(file, 'mine');
      const second = await panHere([name, demo, '--svg', file, ...more]);
      expect([second.code, second.out]).toEqual([3, '']);
      expect(second.err).toContain('--replace');
      expect(readFileSync(file, 'utf8')).toBe('mine');

      expect((await panHere([name, demo, '--svg', file, '--replace', ...more])).code).toBe(0);
      expect(readFileSync(file, 'utf8')).toBe(drawn);
      expect(names(folder)).toEqual(['drawing.svg']);
    }),
  );

  test('a folder that is not there: nothing is written', () =>
    folderFor((folder) => {
      const { code, err } = runPan(['dipstick', demo, '--svg', join(folder, 'no', 'strip.svg')]);
      expect(code).toBe(3);
      expect(err).toContain('does not exist');
      expect(err).not.toMatch(STACK);
      expect(names(folder)).toEqual([]);
    }));
});

describe('pan dipstick', () => {
  test('a design without one is refused with what to add', () => {
    const { code, out, err } = runPan(['dipstick', example('inches')]);
    expect([code, out]).toEqual([2, '']);
    expect(err).toContain('dipstick: {enters:');
    expect(err).not.toMatch(STACK);
  });

  test('JSON carries marks, table and the sentence', () => {
    const found = JSON.parse(runPan(['dipstick', demo, '--json']).out);
    expect(found.confirm).toBe('Confirm: pour a measured quantity, wait 15 minutes, mark');
    expect(found.full.in_pan_L).toBeCloseTo(6, 9);
    expect(found.add.along_mm).toBeGreaterThan(found.full.along_mm);
    expect(found.table.length).toBeGreaterThan(10);
  });

  test('the screen keeps to 80 columns, in either unit', async () => {
    for (const units of ['mm', 'in'])
      expect(widest((await panHere(['dipstick', demo, '--units', units])).out)).toBeLessThanOrEqual(80);
  });
});

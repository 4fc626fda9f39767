import type { LengthUnits, Screen } from 'pan-cli/commands/command.js';
import { checkScreen } from 'pan-cli/terminal/check-screen.js';
import { columns } from 'pan-cli/terminal/wrap.js';
import { expect, test } from 'vitest';
import { plainScreen } from '../plain-screen.js';
import { sampleReport } from './terminal-report.js';

const screen = (width: number, units: LengthUnits = 'mm', colour = false): Screen =>
  plainScreen(width, { units, colour });

// ESC [ … m is the only control sequence colour may use (ECMA-48, select graphic rendition).
const ESCAPE = new RegExp(`${String.fromCharCode(27)}\\[[\\d;]*m`, 'g');

const cases = [60, 72, 80, 100].flatMap((width) =>
  (['mm', 'in'] as const).map((units) => [width, units] as const),
);

test.each(cases)('no line is wider than %s columns in %s', (width, units) => {
  for (const line of checkScreen(sampleReport, screen(width, units)).split('\n')) {
    expect(columns(line)).toBeLessThanOrEqual(width);
  }
});

test.each(cases)('colour changes no letter and no column at %s in %s', (width, units) => {
  const coloured = checkScreen(sampleReport, screen(width, units, true));
  expect(coloured).toMatch(ESCAPE);
  const bare = coloured
    .replace(ESCAPE, '')
    .split('\n')
    .map((line) => line.trimEnd());
  expect(bare).toEqual(checkScreen(sampleReport, screen(width, units)).split('\n'));
});

test('the verdict with its counts comes first, then what binds and what to do', () => {
  const text = checkScreen(sampleReport, screen(80));
  const places = [
    'NOT READY TO CUT   2 fail · 1 unknown · 1 warn · 3 pass',
    'FIRST     FAIL  Mouth covered, trail into right, held: −12 mm, wants ≥ 10 mm',
    '> Move the lid’s front edge 45 mm forward',
    'NEXT      FAIL  Drain plug to the road: 99.6 mm, wants ≥ 100 mm',
    'OIL ',
    'MOUTH ',
    'CRANK ',
    'FIT ',
    'MEASURE AGAIN',
    'NOT KNOWN - engine.crank.throws: x of each throw',
    'ASSUMED ',
    '- pickup.wall, baffles[0].wall: 1.5 mm',
    'REMEMBER  Still-oil geometry, not proof',
  ].map((part) => text.indexOf(part));
  expect(places).toEqual([...places].sort((a, b) => a - b));
  expect(places[0]).toBe(0);
});

test('every state is a word, whether or not there is colour', () => {
  const lines = checkScreen(sampleReport, screen(100)).split('\n');
  for (const check of sampleReport.checks) {
    const word = { pass: 'pass', warn: 'warn', fail: 'FAIL', unknown: 'UNKNOWN' }[check.status];
    expect(lines.some((line) => line.trimStart().startsWith(word) && line.includes(check.title))).toBe(true);
  }
});

test('a check told in full above is pointed back to, not told twice', () => {
  const text = checkScreen(sampleReport, screen(100));
  expect(text.split('with the engine 4 mm down').length - 1).toBe(1);
  expect(text).toContain('see FIRST above');
  expect(text).toContain('see NEXT above');
});

test('a report with nothing amiss names neither a first nor a next', () => {
  const passing = sampleReport.checks.filter((check) => check.status === 'pass');
  const text = checkScreen(
    {
      ...sampleReport,
      verdict: 'pass',
      counts: { pass: passing.length, warn: 0, fail: 0, unknown: 0 },
      first: null,
      next: null,
      checks: passing,
    },
    screen(80),
  );
  expect(text.startsWith('READY FOR THE MOCK-UP   3 pass\n')).toBe(true);
  expect(text).not.toMatch(/FIRST|NEXT|FAIL/);
});

test('a title that carries escape codes arrives without them', () => {
  const title = `Van ${String.fromCharCode(27)}[2J cleared`;
  expect(checkScreen({ ...sampleReport, title }, screen(80))).not.toContain(String.fromCharCode(27));
});

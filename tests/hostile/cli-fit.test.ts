import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fitScreen } from 'pan-cli/terminal/fit-screen.js';
import { buildPan as buildModel, fitReport } from 'pan-core';
import { beforeAll, expect, test } from 'vitest';
import { exampleText, read } from '../design-text.js';
import { plainScreen } from '../plain-screen.js';
import { buildPan, example, inFolder, names, runPan, STACK } from './pan-command.js';

beforeAll(buildPan);

const demo = example('demo');
const widest = (text: string): number => Math.max(...text.split('\n').map((line) => [...line].length));

test('JSON keeps the contract’s keys', () => {
  const { code, out, err } = runPan(['fit', demo, '--json']);
  expect([code, err]).toEqual([1, '']);
  const { clearances, room } = JSON.parse(out);
  expect(clearances.length).toBeGreaterThan(20);
  for (const row of clearances) {
    for (const key of ['distance_mm', 'worst_mm', 'allowed_mm', 'plus_minus_mm'])
      expect(Number.isFinite(row[key]), `${row.name}: ${key}`).toBe(true);
    expect(typeof row.name).toBe('string');
    expect(row.between.length).toBe(2);
    expect(row.at.length).toBe(3);
    expect(row.worst_mm).toBeLessThanOrEqual(row.distance_mm);
  }
  expect(room.map.spare_mm.length).toBe(room.map.up_mm.length);
  // Bonnet and road leave no place: something has to give.
  expect(room.nearest).toBeNull();
  expect(room.gives[0].by_mm).toBeGreaterThan(0);
});

test('a design that fits exits 0, says how far it can move each way, and --svg writes one file', () => {
  inFolder((folder) => {
    const file = join(folder, 'room.svg');
    const { code, out } = runPan(['fit', example('two-wings'), '--json', '--svg', file]);
    expect(code).toBe(0);
    expect(names(folder)).toEqual(['room.svg']);
    expect(readFileSync(file, 'utf8')).toMatch(/^<\?xml[\s\S]*<\/svg>\s*$/);
    const { room, removal } = JSON.parse(out);
    expect(removal.raises[0].raised_mm).toBeGreaterThan(0);
    expect(removal.raises[0].legs.length).toBeGreaterThan(1);
    expect(room.sides.map((side: { toward: string }) => side.toward)).toEqual([
      'forward',
      'rearward',
      'up',
      'down',
    ]);
    const again = runPan(['fit', demo, '--svg', file]);
    expect([again.code, again.out]).toEqual([3, '']);
  });
});

test('the screen says first what stops it, keeps to its width and never leaves out the sentence', async () => {
  const design = await read(exampleText('demo'));
  const report = fitReport(design, buildModel(design.design), {
    range: { foreAft: [-10, 10], height: [-10, 10] },
    tilts: [],
  });
  for (const [width, units] of [
    [60, 'in'],
    [80, 'mm'],
    [120, 'mm'],
  ] as const) {
    const out = fitScreen(report, plainScreen(width, { units }));
    expect(out.split('\n')[0]).toMatch(/^DOES NOT FIT YET: ground /);
    expect(widest(out)).toBeLessThanOrEqual(width);
    expect(out.replace(/\s+/g, ' ')).toContain('Never work under an engine held only by a hoist');
  }
});

test.each([
  [['--fore-aft', 'wide'], /--fore-aft/],
  [['--height', '900'], /--height is 900 mm; it must lie between/],
  [['--height', '10 kg'], /--height/],
  [['--nose-up', '1, 60 deg'], /--nose-up takes up to 8 tilts/],
  [['--nose-up', '1, flat'], /--nose-up/],
] as const)('%j is refused in words', (more, says) => {
  const { code, out, err } = runPan(['fit', demo, ...more]);
  expect([code, out]).toEqual([2, '']);
  expect(err).toMatch(says);
  expect(err).not.toMatch(STACK);
});

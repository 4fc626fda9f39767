import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, expect, test } from 'vitest';
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

test('a design that fits exits 0, and says how far it can move each way', () => {
  const { code, out } = runPan(['fit', example('two-wings'), '--json']);
  expect(code).toBe(0);
  const { room, removal } = JSON.parse(out);
  expect(removal.engine_lift_mm).toBeGreaterThan(0);
  expect(removal.legs.length).toBeGreaterThan(1);
  expect(room.sides.map((side: { toward: string }) => side.toward)).toEqual([
    'forward',
    'rearward',
    'up',
    'down',
  ]);
});

test('the screen says first what stops it, keeps to its width and never leaves out the sentence', () => {
  for (const [columns, units] of [
    ['60', 'in'],
    ['80', 'mm'],
  ] as const) {
    const { out } = runPan(['fit', demo, '--units', units], undefined, { COLUMNS: columns });
    expect(out.split('\n')[0]).toMatch(/^DOES NOT FIT YET: ground /);
    expect(widest(out)).toBeLessThanOrEqual(Number(columns));
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

test('--svg writes one file, and keeps one that stands there', () => {
  inFolder((folder) => {
    const file = join(folder, 'room.svg');
    expect(runPan(['fit', example('two-wings'), '--svg', file]).code).toBe(0);
    expect(names(folder)).toEqual(['room.svg']);
    expect(readFileSync(file, 'utf8')).toMatch(/^<\?xml[\s\S]*<\/svg>\s*$/);
    const again = runPan(['fit', demo, '--svg', file]);
    expect([again.code, again.out]).toEqual([3, '']);
  });
});

import { closeSync, ftruncateSync, openSync, writeFileSync, writeSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { changed, exampleText } from '../design-text.js';
import { type Cost, measuredPan } from './measured-pan.js';
import { buildPan, folderFor, names, STACK } from './pan-command.js';

beforeAll(buildPan);

const rows: string[] = [];
const note = (what: string, { peak, processor, time }: Cost): void => {
  rows.push(
    `  ${what.padEnd(46)} ${peak.toFixed(0).padStart(4)} MB  ${processor.toFixed(1)} s of processor, ${time.toFixed(1)} s`,
  );
};
afterAll(() => console.log(`Peak memory and time, each in a process of its own:\n${rows.join('\n')}`));

const HEAD = 84;
const FACET = 50;
const MILLION = 1_000_000;

/** A binary STL with holes in it: its facets take no room on the disk and are all at the origin. */
const hollow = (path: string, says: number, bytes: number, last: number | null = null): void => {
  const file = openSync(path, 'w');
  ftruncateSync(file, bytes);
  const four = Buffer.alloc(4);
  four.writeUInt32LE(says);
  writeSync(file, four, 0, 4, 80);
  if (last !== null) {
    four.writeFloatLE(last);
    writeSync(file, four, 0, 4, bytes - FACET + 12);
  }
  closeSync(file);
};

/** A text of some ten megabytes whose last corner but a few is wrong. */
const wordy = (path: string): void => {
  const facet =
    'facet normal 0 0 1\n outer loop\n  vertex 400 -300 -200\n  vertex 480 -300 -200\n  vertex 400 300 -200\n endloop\nendfacet\n';
  writeFileSync(path, `solid bay\n${facet.repeat(80_000)}${facet.replace('480', '48O')}endsolid bay\n`);
};

const scanned = (folder: string): void =>
  writeFileSync(
    join(folder, 'pan.yaml'),
    exampleText('demo').replace(
      '  obstacles:\n',
      () => '  obstacles:\n    - {name: bay, scan: bay.stl, placement: {origin: [3000, 0, 0]}}\n',
    ),
  );
const drawn = (folder: string, text: string): void => {
  writeFileSync(
    join(folder, 'pan.yaml'),
    changed(exampleText('drawn-rail'), 'outline: rail.dxf', 'outline: bay.dxf'),
  );
  writeFileSync(join(folder, 'bay.dxf'), text);
};

const pairs = (...all: readonly (string | number)[]): string => `${all.join('\n')}\n`;
const section = (name: string, ...inside: readonly (string | number)[]) => [
  0,
  'SECTION',
  2,
  name,
  ...inside,
  0,
  'ENDSEC',
];
const line = (x: string) => [0, 'LINE', 8, '0', 10, x, 20, 0, 11, 10, 21, 0];
const insert = (name: string) => [0, 'INSERT', 8, '0', 2, name, 10, 0, 20, 0];
const end = [0, 'EOF'];

/** Bare node takes some 45 MB, the tool in order 70 before it reads anything. */
const LITTLE = 130;
/** The corners of a million facets in single precision are 36 MB, and the tree over them takes as much for a moment. */
const MILLION_READ = 260;
/** Seconds of processor time. */
const SOON = 10;

describe('a file that cannot be trusted costs little, is refused with its place and leaves nothing', () => {
  test.each<[string, (folder: string) => void, RegExp]>([
    [
      'a scan of 500 MB',
      (f) => {
        scanned(f);
        hollow(join(f, 'bay.stl'), 10 * MILLION, HEAD + 10 * MILLION * FACET);
      },
      /500 MB/,
    ],
    [
      'a scan of 50 MB, its count a lie',
      (f) => {
        scanned(f);
        hollow(join(f, 'bay.stl'), 4_000_000_000, HEAD + MILLION * FACET);
      },
      /4000000000 facets/,
    ],
    [
      'a scan of 50 MB, cut short',
      (f) => {
        scanned(f);
        hollow(join(f, 'bay.stl'), MILLION, HEAD + MILLION * FACET - 20);
      },
      /1000000 facets/,
    ],
    [
      'a scan of 50 MB, its last facet NaN',
      (f) => {
        scanned(f);
        hollow(join(f, 'bay.stl'), MILLION, HEAD + MILLION * FACET, Number.NaN);
      },
      /facet 1000000 that cannot be: NaN/,
    ],
    [
      'a scan as 10 MB of text, a late corner wrong',
      (f) => {
        scanned(f);
        wordy(join(f, 'bay.stl'));
      },
      /line 560005 that cannot be: 48o/,
    ],
    [
      'a drawing that would hold its parser for ever',
      (f) => drawn(f, pairs(...section('ENTITIES', 0, 'POLYLINE', 8, '0', 70, 1, 0, 'LINE', 8, '0'), ...end)),
      /line 12: A LINE stands where/,
    ],
    [
      'a drawing with a block inside itself',
      (f) =>
        drawn(
          f,
          pairs(
            ...section('BLOCKS', 0, 'BLOCK', 8, '0', 2, 'A', 10, 0, 20, 0, ...insert('A'), 0, 'ENDBLK'),
            ...section('ENTITIES', ...insert('A')),
            ...end,
          ),
        ),
      /block A contains itself/,
    ],
    [
      'a drawing with decimal commas',
      (f) => drawn(f, pairs(...section('ENTITIES', ...line('1,5')), ...end)),
      /line 10: "1,5" has a decimal comma/,
    ],
    [
      'a drawing of a version that does not exist',
      (f) =>
        drawn(
          f,
          pairs(
            ...section('HEADER', 9, '$ACADVER', 1, 'AC9999'),
            ...section('ENTITIES', ...line('1')),
            ...end,
          ),
        ),
      /version, AC9999/,
    ],
  ])('%s', (what, make, says) =>
    folderFor((folder) => {
      make(folder);
      const before = names(folder);
      const { code, out, err, cost } = measuredPan(['fit', 'pan.yaml', '--svg', 'room.svg'], folder);
      note(what, cost);
      expect({ code, out, left: names(folder) }).toEqual({ code: 2, out: '', left: before });
      expect(err).toMatch(says);
      expect(err).toMatch(/pan\.yaml:\d+:\d+/);
      expect(err).not.toMatch(STACK);
      expect(cost.peak).toBeLessThan(what.includes('50 MB,') ? MILLION_READ : LITTLE);
      expect(cost.processor).toBeLessThan(SOON);
    }),
  );

  test('a scan of 50 MB in order is read in bounded memory', () =>
    folderFor((folder) => {
      scanned(folder);
      hollow(join(folder, 'bay.stl'), MILLION, HEAD + MILLION * FACET, 400);
      const { code, out, err, cost } = measuredPan(['check', 'pan.yaml', '--json'], folder);
      note('a scan of 50 MB in order', cost);
      expect(code, err).toBe(1);
      expect(out).toContain('bay');
      expect(cost.peak).toBeLessThan(MILLION_READ);
    }));
});

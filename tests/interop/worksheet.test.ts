import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { designKeyRows, notMeasured, PAPERS, worksheet, worksheetParts } from 'pan-core';
import { beforeAll, describe, expect, it } from 'vitest';
import { buildPan, example, inFolder, runPan } from '../hostile/pan-command.js';
import { hasPrinter, MISSING_PRINTER, pageCount, pageWords, wordBoxes } from './pdf-picture.js';

beforeAll(() => {
  if (!hasPrinter()) throw new Error(MISSING_PRINTER);
  buildPan();
});

const parts = worksheetParts('mm');
const shown = parts.flatMap(({ rows }) => rows.map(({ key }) => key));
/** Keys that hold a value of their own, and no group of others. */
const leaves = designKeyRows()
  .map(({ key }) => key)
  .filter((key, _, all) => !all.some((other) => other.startsWith(`${key}.`) || other.startsWith(`${key}[]`)));

const within = (key: string, start: string): boolean =>
  key === start ||
  key.startsWith(`${start}.`) ||
  key.startsWith(`${start}[]`) ||
  (start.endsWith('[]') && key.startsWith(start));

describe('the worksheet follows the table of keys', () => {
  it('every key is either measured on it or said not to be, and none is both', () => {
    for (const key of leaves) {
      const left = notMeasured().some(({ key: start }) => within(key, start));
      expect([key, shown.includes(key) !== left]).toEqual([key, true]);
    }
    for (const { key } of notMeasured())
      expect(
        designKeyRows().some((row) => within(row.key, key)),
        key,
      ).toBe(true);
  });

  it('each stands once, in the order of the design file', () => {
    expect(new Set(shown).size).toBe(shown.length);
    const order = designKeyRows().map(({ key }) => key);
    const places = shown.map((key) => order.indexOf(key));
    // Distances between holes have a page of their own after the rest of the holes.
    const apart = (key: string): boolean => /rail_holes\.(distances|placed|rough)$/.test(key);
    const rest = places.filter((_, i) => !apart(shown[i] as string));
    expect(rest).toEqual([...rest].sort((a, b) => a - b));
  });

  it.each(['a4', 'letter'] as const)('nothing lies off the paper: %s', (paper) => {
    const [width, height] = PAPERS[paper];
    for (const page of worksheet({ paper, units: 'mm', title: 'A trial', plan: null }).pages) {
      expect([page.width, page.height]).toEqual([width, height]);
      for (const item of page.items) {
        const points =
          item.kind === 'words'
            ? [item.at]
            : item.kind === 'clip'
              ? []
              : item.path.flatMap((piece) => [piece.from, piece.to]);
        for (const [x, y] of points) {
          expect(x).toBeGreaterThan(4);
          expect(x).toBeLessThan(width - 4);
          expect(y).toBeGreaterThan(4);
          expect(y).toBeLessThan(height - 4);
        }
      }
    }
  });
});

describe('pan worksheet', () => {
  it('prints every measured key, read back by poppler, on paper of the size asked for', () => {
    inFolder((folder) => {
      for (const paper of ['A4', 'Letter']) {
        const out = join(folder, `${paper}.pdf`);
        const { code, err } = runPan(['worksheet', '--out', out, '--paper', paper]);
        expect(code).toBe(0);
        expect(err).toMatch(/Wrote .*: 16 pages/);
        const pdf = readFileSync(out);
        expect(pageCount(pdf)).toBe(16);
        const words = pageWords(pdf).replace(/\s+/g, ' ');
        for (const key of shown) expect(words).toContain(key);
        for (const { box } of wordBoxes(pdf)) {
          expect(box[0]).toBeGreaterThan(5);
          expect(box[2]).toBeLessThan(paper === 'A4' ? 205.5 : 211.5);
        }
      }
    });
  }, 60_000);

  it('keeps a file that is there, and needs a name for a new one', () => {
    inFolder((folder) => {
      const out = join(folder, 'sheet.pdf');
      writeFileSync(out, 'mine');
      expect(runPan(['worksheet', '--out', out]).code).toBe(3);
      expect(readFileSync(out, 'utf8')).toBe('mine');
      expect(runPan(['worksheet']).code).toBe(2);
      expect(runPan(['worksheet', join(folder, 'none.yaml'), '--out', join(folder, 'x.pdf')]).code).toBe(2);
    });
  });

  it('proposes distances for holes known roughly', () => {
    inFolder((folder) => {
      const rough = [
        [10, -110],
        [200, -112],
        [430, -110],
        [670, -108],
        [680, 0],
        [670, 110],
        [420, 112],
        [190, 110],
        [10, 108],
      ];
      const file = join(folder, 'rough.yaml');
      const demo = readFileSync(example('demo'), 'utf8');
      writeFileSync(
        file,
        demo.replace(/rail_holes: .*/, `rail_holes: {size: M8, rough: ${JSON.stringify(rough)}}`),
      );
      const { code, out } = runPan(['worksheet', file, '--out', join(folder, 'sheet.pdf'), '--json']);
      expect(code).toBe(0);
      const { measure, pages } = JSON.parse(out);
      expect(pages).toBe(17);
      expect(measure.least_redundancy).toBeGreaterThanOrEqual(0.2);
      expect(measure.distances.length).toBeGreaterThanOrEqual(27);
    });
  });
});

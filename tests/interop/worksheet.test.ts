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
/** Rows that stand on another page too are counted where they are asked. */
const shown = parts.flatMap(({ rows }) => rows.filter(({ again }) => !again).map(({ key }) => key));
/** Keys that hold a value of their own, and no group of others. */
const known = designKeyRows().map(({ key }) => key);
const leaves = known.filter(
  (key, _, all) => !all.some((other) => other.startsWith(`${key}.`) || other.startsWith(`${key}[]`)),
);

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
        known.some((one) => within(one, key)),
        key,
      ).toBe(true);
  });

  it('each is asked once, in the order of the design file on its page and from page to page', () => {
    expect(new Set(shown).size).toBe(shown.length);
    const asked = parts.map(({ rows }) =>
      rows.filter(({ again }) => !again).map(({ key }) => known.indexOf(key)),
    );
    for (const page of asked) expect(page).toEqual([...page].sort((a, b) => a - b));
    // Distances between holes have a page of their own after the rest of the holes.
    const firsts = asked.filter((_, i) => parts[i]?.id !== 'distances').map(([first = -1]) => first);
    expect(firsts).toEqual([...firsts].sort((a, b) => a - b));
  });

  it('every row has boxes, or a table on its page or the next', () => {
    for (const { key, boxes, columns } of parts.flatMap(({ rows }) => rows))
      expect([key, boxes.length + columns.length > 0]).toEqual([key, true]);
    const held = parts.flatMap(({ rows }) => rows).find(({ key }) => key === 'oil.held_up');
    expect(held?.boxes).toEqual(['L']);
    expect(held?.columns).toEqual(['rev/min', 'L']);
  });

  it('every list of things that is measured has boxes for more than one of them', () => {
    const lists = new Set(
      shown.filter((key) => key.includes('[]')).map((key) => key.replace(/\[\][^[]*$/, '[]')),
    );
    const repeated = parts.flatMap(({ repeats }) => repeats.map(({ list }) => list));
    for (const list of lists) expect(repeated).toContain(list);
    for (const paper of ['a4', 'letter'] as const) {
      const set = worksheet({ paper, units: 'mm', title: '', plan: null });
      const heads = set.pages.flatMap(({ items }) =>
        items.map((one) => (one.kind === 'words' ? one.text : '')),
      );
      for (const { head } of parts.flatMap(({ repeats }) => repeats))
        expect([paper, heads.some((text) => text.startsWith(`${head}:`))]).toEqual([paper, true]);
    }
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
        const off = points.filter(([x, y]) => x <= 4 || x >= width - 4 || y <= 4 || y >= height - 4);
        if (off.length > 0) expect(off).toEqual([]);
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
        expect(err).toMatch(/Wrote .*: 20 pages/);
        const pdf = readFileSync(out);
        expect(pageCount(pdf)).toBe(20);
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
      expect(pages).toBe(21);
      expect(measure.least_redundancy).toBeGreaterThanOrEqual(0.2);
      expect(measure.distances.length).toBeGreaterThanOrEqual(27);
    });
  });
});

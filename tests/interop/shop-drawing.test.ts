import { pdfPrinter } from 'pan-cli/write/pdf.js';
import type { Design } from 'pan-core/design/index.js';
import { cutSet, type Paper } from 'pan-core/drawing/index.js';
import { buildPan } from 'pan-core/pan/index.js';
import type { Part } from 'pan-core/sheet/index.js';
import { describe, expect, it } from 'vitest';
import { expectWithin } from '../numbers.js';
import { sampleDesign } from '../sample-design.js';
import { partsOf, reportOf } from './dxf-cut-set.js';
import {
  drawPage,
  hasPrinter,
  longLines,
  MISSING_PRINTER,
  pageWords,
  type WordBox,
  wordBoxes,
} from './pdf-picture.js';
import { pans } from './stl-pans.js';

const print = pdfPrinter();

/** Drawings by part, in the parts' order. */
const drawingsOf = async (
  design: Design,
  paper: Paper,
): Promise<readonly { readonly part: Part; readonly pdf: Uint8Array }[]> => {
  const parts = partsOf(design);
  const files = await cutSet(buildPan(design), parts, reportOf(design.title, 'fail'), {
    paper,
    print: async (set) => (set.title.endsWith('templates') ? new Uint8Array() : print(set)),
  });
  const drawn = files.filter((file) => file.path.startsWith('3-bench/drawings/'));
  return parts.map((part, i) => ({ part, pdf: drawn[i]?.content as Uint8Array }));
};

/** Words whose boxes share more than a hair's breadth both ways; boxes reach above and below the letters. */
const overlaps = (all: readonly WordBox[]): readonly string[] =>
  all.flatMap((a, i) =>
    all.slice(i + 1).flatMap((b) => {
      if (a.page !== b.page) return [];
      const across = Math.min(a.box[2], b.box[2]) - Math.max(a.box[0], b.box[0]);
      const down = Math.min(a.box[3], b.box[3]) - Math.max(a.box[1], b.box[1]);
      return across > 0.3 && down > 0.9 ? [`page ${a.page}: ${a.word} over ${b.word}`] : [];
    }),
  );

describe.each(pans)('shop drawings of %s, read back by poppler', (_, design) => {
  it.each(['a4', 'letter'] as const)(
    'have no words over others on %s, and none off the page',
    async (paper) => {
      if (!hasPrinter()) throw new Error(MISSING_PRINTER);
      const [width, height] = paper === 'a4' ? [297, 210] : [279.4, 215.9];
      for (const { part, pdf } of await drawingsOf(design, paper)) {
        const all = wordBoxes(pdf);
        expect(all.length, part.name).toBeGreaterThan(50);
        expect(overlaps(all), part.name).toEqual([]);
        for (const { box, word } of all) {
          expect(box[0], word).toBeGreaterThan(5);
          expect(box[1], word).toBeGreaterThan(5);
          expect(box[2], word).toBeLessThan(width - 5);
          expect(box[3], word).toBeLessThan(height - 5);
        }
      }
    },
  );
});

describe('the pages of sheets', () => {
  it('have no words over others, and number every part that lies on them', async (ctx) => {
    if (!hasPrinter()) return ctx.skip(MISSING_PRINTER);
    const design = sampleDesign();
    const files = await cutSet(buildPan(design), partsOf(design), reportOf(design.title, 'fail'), {
      paper: 'a4',
      print: async (set) => (set.title.endsWith('sheets') ? print(set) : new Uint8Array()),
    });
    const pdf = files.find((file) => file.path === '2-laser/nests/sheets.pdf')?.content as Uint8Array;
    expect(overlaps(wordBoxes(pdf))).toEqual([]);
    const words = pageWords(pdf);
    expect(words).toContain('NOT READY TO CUT: fail_0');
    expect(words).toContain('do not measure on the paper');
    expect(words).toContain('Prove a mock-up on block and car first');
    for (const name of ['belly', 'side-left', 'flange', 'strongback']) expect(words).toContain(name);
  });
});

describe('a shop drawing', () => {
  it('says what the part is, every fold and hole of it, its seams and cautions', async (ctx) => {
    if (!hasPrinter()) return ctx.skip(MISSING_PRINTER);
    for (const { part, pdf } of await drawingsOf(sampleDesign(), 'a4')) {
      const words = pageWords(pdf).replace(/\s+/g, ' ');
      expect(words).toContain(part.name);
      expect(words).toContain(part.material);
      expect(words).toContain('NOT READY TO CUT: fail_0');
      expect(words).toContain(`${part.flat[0].toFixed(1)} × ${part.flat[1].toFixed(1)} mm`);
      part.folds.forEach((fold, i) => {
        const angle = ((fold.angle * 180) / Math.PI).toFixed(1);
        expect(words, part.name).toMatch(new RegExp(`F${i + 1} ${fold.name} ${fold.direction} ${angle}°`));
      });
      part.holes.forEach((hole, i) => {
        // The part's own corner is at 0, 0.
        const row = `${i + 1} ${hole.at[0].toFixed(1)} ${hole.at[1].toFixed(1)} `;
        expect(words, part.name).toContain(row);
      });
      expect(words).toContain('Never chlorinated cleaner near an arc');
      expect(words).toContain('Prove a mock-up on block and car first');
    }
  });

  it('gives the belly’s corner seam as a groove of the sheet’s depth and the seam’s length', async (ctx) => {
    if (!hasPrinter()) return ctx.skip(MISSING_PRINTER);
    const [belly] = await drawingsOf(sampleDesign(), 'a4');
    const words = pageWords(belly?.pdf ?? new Uint8Array()).replace(/\s+/g, ' ');
    expect(words).toContain('ISO 2553');
    expect(words).toMatch(/s3 \d+ /);
    expect(words).toContain('to side left');
    expect(words).toContain('to flange');
  });

  it('at full size has bars of 100 mm along both axes, within 0.1 mm; any other says not to measure', async (ctx) => {
    if (!hasPrinter()) return ctx.skip(MISSING_PRINTER);
    const drawn = await drawingsOf(sampleDesign(), 'a4');
    const full = drawn.filter(({ pdf }) => /Full size where both bars are 100 mm/.test(pageWords(pdf, 1)));
    expect(full.length).toBeGreaterThan(0);
    for (const { part, pdf } of drawn) {
      const claims = /\s1:1\s/.test(pageWords(pdf));
      expect(
        full.some((one) => one.part === part),
        part.name,
      ).toBe(claims);
      const warned = pageWords(pdf, 1).includes('Not full size: do not measure on the paper');
      expect(warned, part.name).toBe(!claims);
    }
    // 600 dots an inch: a pixel is 0.042 mm.
    const picture = drawPage(full[0]?.pdf ?? new Uint8Array(), 1, 600);
    for (const way of ['upright', 'level'] as const) {
      const bars = longLines(picture, way, 100.13);
      expect(bars.length, way).toBe(1);
      // Cross lines 0.13 mm wide stand with their middles at the bar's ends.
      expectWithin((bars[0]?.to ?? 0) - (bars[0]?.from ?? 0) - 0.13, 100, 0.1, `${way}, mm`);
    }
  });
});

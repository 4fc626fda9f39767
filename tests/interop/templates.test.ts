import { pdfPrinter } from 'pan-cli/write/pdf.js';
import { cutSet, type Paper } from 'pan-core/drawing/index.js';
import { buildPan } from 'pan-core/pan/index.js';
import { describe, expect, it } from 'vitest';
import { expectWithin } from '../numbers.js';
import { sampleDesign } from '../sample-design.js';
import { partsOf, reportOf } from './dxf-cut-set.js';
import { drawPage, hasPrinter, longLines, MISSING_PRINTER, pageCount, pageWords } from './pdf-picture.js';

const design = sampleDesign();
const print = pdfPrinter();
const PAPERS: readonly (readonly [Paper, number, number])[] = [
  ['a4', 210, 297],
  ['letter', 215.9, 279.4],
];

const templatesOn = async (paper: Paper): Promise<Uint8Array> => {
  const files = await cutSet(buildPan(design), partsOf(design), reportOf(design.title, 'fail'), {
    paper,
    // Only the file asked for is printed: the rest is not looked at here.
    print: async (set) => (set.title.endsWith('templates') ? print(set) : new Uint8Array()),
  });
  const content = files.find((file) => file.path === '1-mock-up/templates.pdf')?.content;
  if (!(content instanceof Uint8Array)) throw new Error('no templates');
  return content;
};

describe.each(PAPERS)('templates on %s, drawn by poppler', (paper, width, height) => {
  const pdf = templatesOn(paper);
  // 600 dots an inch: a pixel is 0.042 mm.
  const DPI = 600;

  it('has pages of the paper’s size', async (ctx) => {
    if (!hasPrinter()) return ctx.skip(MISSING_PRINTER);
    const picture = drawPage(await pdf, 1, DPI);
    expectWithin(picture.width * picture.pixel, width, 0.05, 'width, mm');
    expectWithin(picture.height * picture.pixel, height, 0.05, 'height, mm');
  });

  it('has a check square of 100 mm both ways on the map, within 0.1 mm', async (ctx) => {
    if (!hasPrinter()) return ctx.skip(MISSING_PRINTER);
    const picture = drawPage(await pdf, 1, DPI);
    for (const way of ['upright', 'level'] as const) {
      const lines = longLines(picture, way, 100);
      // The check bar and the square's two sides.
      expect(lines.length, way).toBe(3);
      const pairs = lines.flatMap((a) => lines.map((b) => b.at - a.at));
      const nearest = Math.min(...pairs.map((gap) => Math.abs(gap - 100)));
      expect(nearest, `${way}: off 100 mm by`).toBeLessThan(0.1);
    }
  });

  it('has bars of 100 mm along both axes of every page, within 0.1 mm of it and a tick’s width', async (ctx) => {
    if (!hasPrinter()) return ctx.skip(MISSING_PRINTER);
    const pages = pageCount(await pdf);
    expect(pages).toBeGreaterThan(10);
    for (const page of [2, Math.ceil(pages / 2), pages]) {
      const picture = drawPage(await pdf, page, DPI);
      for (const way of ['upright', 'level'] as const) {
        const bar = longLines(picture, way, 100.13).at(way === 'upright' ? 0 : -1);
        // Tick lines 0.13 mm wide stand with their middles at the bar's ends.
        expectWithin((bar?.to ?? 0) - (bar?.from ?? 0) - 0.13, 100, 0.1, `page ${page}, ${way}, mm`);
      }
    }
  });

  it('says on every page what it is, from which side, of how many pages, and what stops it', async (ctx) => {
    if (!hasPrinter()) return ctx.skip(MISSING_PRINTER);
    const bytes = await pdf;
    const pages = pageCount(bytes);
    for (const page of [1, 2, 3, pages]) {
      const words = pageWords(bytes, page);
      expect(words).toContain(`page ${page} of ${pages}`);
      expect(words).toMatch(/seen from outside/i);
      expect(words).toContain('NOT READY TO CUT: fail_0');
      expect(words).toContain('Prove a mock-up on block and car first');
    }
    const all = pageWords(bytes);
    expect(all).toContain('side left, left hand');
    expect(all).toContain('side right, right hand');
  });
});

import { createRequire } from 'node:module';
import type { Fill, Page, PageItem, PagePrinter, PageSet, Pen, Words } from 'pan-core';
import PDFDocument from 'pdfkit';
import { drawPath, type Point } from './pdf-path.js';

const POINTS_PER_MM = 72 / 25.4;
// The same design gives the same bytes, whenever it is printed.
const DATED = new Date(Date.UTC(2000, 0, 1));
const FONTS = {
  plain: '400Regular/FiraSansCondensed_400Regular',
  bold: '600SemiBold/FiraSansCondensed_600SemiBold',
};

type Doc = InstanceType<typeof PDFDocument>;

/** Width in mm, colour, and dashes in mm. */
const PENS: Readonly<
  Record<Pen, readonly [width: number, colour: string, dash?: readonly [number, number]]>
> = {
  cut: [0.35, '#000000'],
  fold: [0.18, '#1d4f91'],
  crease: [0.25, '#1d4f91', [4, 1.5]],
  mark: [0.18, '#2f6b3a', [1.2, 1]],
  thin: [0.13, '#333333'],
  frame: [0.35, '#222222'],
  faint: [0.13, '#9a9a9a'],
  trim: [0.18, '#8a8a8a', [2, 2]],
};
const SHADES: Readonly<Record<Fill['shade'], string>> = {
  ink: '#111111',
  grey: '#8a8a8a',
  pale: '#ececec',
  paper: '#ffffff',
};

/**
 * Prints pages as PDF files, true to size, each with the letters that it uses inside. The fonts are read
 * once for all files of one printer, since reading them takes longer than drawing.
 */
export const pdfPrinter = (): PagePrinter => {
  const [plain, bold] = [readFont(FONTS.plain), readFont(FONTS.bold)];
  return (set) => printPages(set, plain, bold);
};

/** A font as the library has read it: a document of its own is the only way there. */
const readFont = (name: string): Font => {
  const find = createRequire(import.meta.url);
  const font = find.resolve(`@expo-google-fonts/fira-sans-condensed/${name}.ttf`);
  return inner(new PDFDocument({ autoFirstPage: false, font }))._font.font;
};

const printPages = async (set: PageSet, plain: Font, bold: Font): Promise<Uint8Array> => {
  const doc = new PDFDocument({
    autoFirstPage: false,
    margin: 0,
    displayTitle: true,
    // Otherwise it loads one of its own, which knows neither Ø nor ≤.
    font: plain,
    info: { Title: set.title, Creator: 'pan', Producer: 'pan', CreationDate: DATED, ModDate: DATED },
  });
  const bytes = collect(doc);
  doc.registerFont('plain', plain);
  doc.registerFont('bold', bold);
  keepSize(doc);
  for (const page of set.pages) drawPage(doc, page);
  doc.end();
  return bytes;
};

const collect = (doc: Doc): Promise<Uint8Array> =>
  new Promise((done, fail) => {
    const pieces: Buffer[] = [];
    doc.on('data', (piece: Buffer) => pieces.push(piece));
    doc.on('error', fail);
    doc.on('end', () => done(new Uint8Array(Buffer.concat(pieces))));
  });

/** Asks the printing program not to fit pages to the paper: ISO 32000-1, table 150. */
const keepSize = (doc: Doc): void => {
  inner(doc)._root.data.ViewerPreferences.data.PrintScaling = 'None';
};

/** What the library has no way of its own to ask or to set. */
interface Inner {
  readonly _root: {
    readonly data: { readonly ViewerPreferences: { readonly data: { PrintScaling?: string } } };
  };
  readonly _font: { readonly font: Font };
}

/** A font that the library has read; it takes one back wherever it takes a font's file. */
type Font = string & { readonly hasGlyphForCodePoint: (point: number) => boolean };

const inner = (doc: Doc): Inner => doc as unknown as Inner;

/** A letter that the font lacks would come out as an empty box. */
const printable = (doc: Doc, text: string): string =>
  [...text]
    .map((letter) => (inner(doc)._font.font.hasGlyphForCodePoint(letter.codePointAt(0) ?? 0) ? letter : '?'))
    .join('');

const drawPage = (doc: Doc, page: Page): void => {
  doc.addPage({ size: [page.width * POINTS_PER_MM, page.height * POINTS_PER_MM], margin: 0 });
  const to = ([x, y]: Point): Point => [x * POINTS_PER_MM, (page.height - y) * POINTS_PER_MM];
  for (const item of page.items) drawItem(doc, item, to);
};

const drawItem = (doc: Doc, item: PageItem, to: (p: Point) => Point): void => {
  switch (item.kind) {
    case 'stroke': {
      const [width, colour, dash] = PENS[item.pen];
      drawPath(doc, item.path, to);
      doc
        .lineWidth(width * POINTS_PER_MM)
        .lineJoin('round')
        .lineCap('butt');
      if (dash === undefined) doc.undash();
      else doc.dash(dash[0] * POINTS_PER_MM, { space: dash[1] * POINTS_PER_MM });
      doc.stroke(colour);
      return;
    }
    case 'fill':
      drawPath(doc, item.path, to);
      doc.fill(SHADES[item.shade]);
      return;
    case 'words':
      drawWords(doc, item, to);
      return;
    case 'clip': {
      const { min, max } = item.box;
      const [x, y] = to([min[0], max[1]]);
      doc.save();
      doc.rect(x, y, (max[0] - min[0]) * POINTS_PER_MM, (max[1] - min[1]) * POINTS_PER_MM).clip();
      for (const one of item.items) drawItem(doc, one, to);
      doc.restore();
    }
  }
};

const drawWords = (doc: Doc, item: Words, to: (p: Point) => Point): void => {
  if (item.text === '') return;
  doc.font(item.bold === true ? 'bold' : 'plain').fontSize(item.size * POINTS_PER_MM);
  const text = printable(doc, item.text);
  const full = doc.widthOfString(text);
  const room = item.room === undefined ? full : item.room * POINTS_PER_MM;
  const pressed = Math.min(1, room / full);
  const back = item.align === 'centre' ? full / 2 : item.align === 'right' ? full : 0;
  const [x, y] = to(item.at);
  const turned = ((item.turned ?? 0) * 180) / Math.PI;
  doc.save();
  doc.translate(x, y).rotate(-turned).scale(pressed, 1);
  doc.fillColor('#111111');
  doc.text(text, -back, 0, { lineBreak: false, baseline: 'alphabetic' });
  doc.restore();
};

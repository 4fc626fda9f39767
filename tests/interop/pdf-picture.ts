import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

export const hasPrinter = (): boolean => spawnSync('pdftoppm', ['-v']).status === 0;

export const MISSING_PRINTER = 'pdftoppm is missing (Debian: apt-get install poppler-utils)';

/** A page as grey pixels, 0 black, row by row from the top. */
export interface Picture {
  readonly width: number;
  readonly height: number;
  readonly grey: Uint8Array;
  /** Size of a pixel, mm. */
  readonly pixel: number;
}

const inFile = <T>(pdf: Uint8Array, use: (file: string) => T): T => {
  const folder = mkdtempSync(join(tmpdir(), 'pan-pdf-'));
  try {
    const file = join(folder, 'pages.pdf');
    writeFileSync(file, pdf);
    return use(file);
  } finally {
    rmSync(folder, { recursive: true });
  }
};

/** Draws a page with poppler, an independent renderer. */
export const drawPage = (pdf: Uint8Array, page: number, dpi: number): Picture =>
  inFile(pdf, (file) => {
    const stem = `${file}.out`;
    execFileSync('pdftoppm', [
      '-gray',
      '-r',
      String(dpi),
      '-f',
      String(page),
      '-l',
      String(page),
      '-singlefile',
      file,
      stem,
    ]);
    const bytes = readFileSync(`${stem}.pgm`);
    // Portable grey map: "P5", width, height and 255 as text, one white space after each, then the pixels.
    const head = /^P5\s(\d+)\s(\d+)\s255\s/.exec(bytes.subarray(0, 40).toString('latin1'));
    if (head === null) throw new Error('no grey map');
    const grey = new Uint8Array(bytes.subarray(head[0].length));
    return { width: Number(head[1]), height: Number(head[2]), grey, pixel: 25.4 / dpi };
  });

/** The words of a page, or of all, as poppler reads them back. */
export const pageWords = (pdf: Uint8Array, page?: number): string =>
  inFile(pdf, (file) =>
    execFileSync('pdftotext', [
      '-layout',
      ...(page === undefined ? [] : ['-f', String(page), '-l', String(page)]),
      file,
      '-',
    ]).toString('utf8'),
  );

export interface WordBox {
  readonly page: number;
  readonly word: string;
  /** mm from the page's upper left corner */
  readonly box: readonly [xMin: number, yMin: number, xMax: number, yMax: number];
}

/** Every word with the box that poppler finds round it. */
export const wordBoxes = (pdf: Uint8Array): readonly WordBox[] =>
  inFile(pdf, (file) => {
    const text = execFileSync('pdftotext', ['-bbox', file, '-']).toString('utf8');
    const row = /<page |<word xMin="([^"]+)" yMin="([^"]+)" xMax="([^"]+)" yMax="([^"]+)">([^<]*)</g;
    const mm = (points: string | undefined): number => (Number(points) * 25.4) / 72;
    let page = 0;
    return [...text.matchAll(row)].flatMap((found): WordBox[] => {
      if (found[1] === undefined) {
        page += 1;
        return [];
      }
      const box = [mm(found[1]), mm(found[2]), mm(found[3]), mm(found[4])] as const;
      return [{ page, word: found[5] ?? '', box }];
    });
  });

export const pageCount = (pdf: Uint8Array): number =>
  inFile(pdf, (file) =>
    Number(/^Pages:\s+(\d+)/m.exec(execFileSync('pdfinfo', [file]).toString('utf8'))?.[1]),
  );

/** Where lines of about `length` mm stand: the middle of each, mm from the picture's left or top edge. */
export const longLines = (
  picture: Picture,
  way: 'upright' | 'level',
  length: number,
): readonly { readonly at: number; readonly from: number; readonly to: number }[] => {
  const { width, height, grey, pixel } = picture;
  const [across, along] = way === 'upright' ? [width, height] : [height, width];
  const dark = (i: number, k: number): boolean =>
    (way === 'upright' ? grey[k * width + i]! : grey[i * width + k]!) < 150;
  const found: { at: number; from: number; to: number }[] = [];
  let group: { i: number; from: number; to: number }[] = [];
  const close = (): void => {
    if (group.length === 0) return;
    const middle = (group[0]!.i + group[group.length - 1]!.i + 1) / 2;
    found.push({ at: middle * pixel, from: group[0]!.from * pixel, to: group[0]!.to * pixel });
    group = [];
  };
  for (let i = 0; i < across; i++) {
    let run: { from: number; to: number } | null = null;
    for (let k = 0, start = -1; k <= along; k++) {
      if (k < along && dark(i, k)) {
        if (start < 0) start = k;
        continue;
      }
      if (start >= 0 && Math.abs((k - start) * pixel - length) < 1) run = { from: start, to: k };
      start = -1;
    }
    if (run === null) close();
    else group.push({ i, ...run });
  }
  close();
  return found;
};

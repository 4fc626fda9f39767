import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { PageData } from 'pan-cli/page/data.js';
import { pageData } from 'pan-cli/report/page-data.js';
import { pageFile } from 'pan-cli/report/page-file.js';
import { drawingMm, words as svgWords } from 'pan-cli/report/svg.js';
import { plain } from 'pan-cli/terminal/plain.js';
import { pdfPrinter } from 'pan-cli/write/pdf.js';
import { csv } from 'pan-core/drawing/csv.js';
import { partDxf } from 'pan-core/drawing/index.js';
import { oneLine } from 'pan-core/drawing/one-line.js';
import { words as pageWords } from 'pan-core/drawing/page/page.js';
import { safeName, safeNames } from 'pan-core/drawing/safe-name.js';
import { afterAll, describe, expect, it } from 'vitest';
import { read, SMALLEST } from '../design-text.js';
import { plate } from '../interop/dxf-parts.js';
import { hasReader, MISSING_READER, readDrawings } from '../interop/dxf-reader.js';
import { hostileWords } from './hostile-words.js';

const SEED = 500;
const WORDS = hostileWords(500, SEED);
const TAME = WORDS.map((_, i) => `word ${i}`);

const folder = mkdtempSync(join(tmpdir(), 'pan-words-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const python = spawnSync('python3', ['-c', 'import xml, csv, json, html.parser']).status === 0;
const MISSING_PYTHON = 'skipped: python3 missing';
const hasPdf = spawnSync('pdftotext', ['-v']).status === 0;
const MISSING_PDF = 'skipped: pdftotext missing';

/** What readers of the standard library of another language find in a text of that kind. */
const foreign = <T>(name: string, text: string): T => {
  const path = join(folder, name);
  writeFileSync(path, text);
  const reader = new URL('foreign-readers.py', import.meta.url).pathname;
  const out = execFileSync('python3', [reader, path], { encoding: 'utf8', maxBuffer: 1e8 });
  return (JSON.parse(out) as Record<string, T>)[name] as T;
};

interface Markup {
  readonly tags: Readonly<Record<string, number>>;
  readonly attributes: Readonly<Record<string, number>>;
  readonly texts: readonly string[];
}

describe(`${WORDS.length} hostile words (seed ${SEED}) are words and nothing else`, () => {
  it('in DXF: the same entities as for tame ones, every one a text of one line', (ctx) => {
    if (!hasReader()) return ctx.skip(MISSING_READER);
    const drawn = (all: readonly string[]) =>
      readDrawings(
        Array.from({ length: 10 }, (_, k) => {
          const some = all.slice(50 * k, 50 * k + 50);
          const part = plate({
            name: some[0] ?? '',
            what: some[1] ?? '',
            material: some[2] ?? '',
            notes: some.slice(3, 30),
            marks: some.slice(30, 40).map((what, i) => ({
              what,
              path: [{ kind: 'line' as const, from: [20, 20 + 10 * i], to: [250, 20 + 10 * i] }],
            })),
            holes: some.slice(40, 45).map((what, i) => ({ what, at: [30 + 40 * i, 150], diameter: 12 })),
          });
          return partDxf(part, {
            title: some[45] ?? '',
            warning: some[46] ?? '',
            sentences: some.slice(47),
          });
        }),
      );
    const [hostile, tame] = [drawn(WORDS), drawn(TAME)];
    expect(hostile.flatMap((d) => [...d.errors, ...d.fixes])).toEqual([]);
    const shapes = (set: typeof tame) => set.map((d) => d.entities.filter((e) => e.type !== 'TEXT'));
    expect(shapes(hostile)).toEqual(shapes(tame));
  });

  it('in SVG: one element each, its text the words themselves without what XML forbids', (ctx) => {
    if (!python) return ctx.skip(MISSING_PYTHON);
    const drawn = (all: readonly string[]) =>
      drawingMm(
        100,
        100,
        oneLine(all[0] ?? ''),
        all.map((text, i) => svgWords([0, i], oneLine(text), { class: oneLine(text) })),
      );
    const [hostile, tame] = [
      foreign<Markup>('hostile.svg', drawn(WORDS)),
      foreign<Markup>('tame.svg', drawn(TAME)),
    ];
    expect([hostile.tags, hostile.attributes]).toEqual([tame.tags, tame.attributes]);
    expect(hostile.texts.slice(1)).toEqual(WORDS.map((text) => oneLine(text)));
  });

  it('in CSV: one cell each, and none that a spreadsheet would work out', (ctx) => {
    if (!python) return ctx.skip(MISSING_PYTHON);
    const { rows } = foreign<{ rows: string[][] }>(
      'words.csv',
      csv(WORDS.map((text, i) => [i, oneLine(text), 'end'])),
    );
    expect(rows).toHaveLength(WORDS.length);
    rows.forEach(([, cell = '', end], i) => {
      const text = oneLine(WORDS[i] as string);
      expect([cell, end]).toEqual([/^[=+\-@]/.test(text) ? `'${text}` : text, 'end']);
      expect(cell).not.toMatch(/^[=+\-@\t\r]/);
    });
  });

  it('in HTML: a page has the elements and attributes it has with tame ones', async (ctx) => {
    if (!python) return ctx.skip(MISSING_PYTHON);
    const data = await pageData(await read(SMALLEST), '0');
    const paged = (all: readonly string[]): string => {
      const [title, first, second, third, ...rest] = all as [string, string, string, string, ...string[]];
      const named: PageData = {
        ...data,
        title,
        check: {
          ...data.check,
          title: first,
          checks: data.check.checks.map((check, i) => ({
            ...check,
            title: rest[i] ?? '',
            because: rest[100 + i] ?? '',
            try: rest[200 + i] ?? '',
          })),
        },
        obstacles: data.obstacles.map((one, i) => ({ ...one, name: `${i}${second}` })),
        parts: data.parts.map((part, i) => ({ ...part, name: `${i}${third}` })),
        cautions: rest,
      };
      return pageFile(named, { script: '', style: '' }).html;
    };
    const [hostile, tame] = [
      foreign<Markup>('hostile.html', paged(WORDS.map((text) => text.slice(0, 400)))),
      foreign<Markup>('tame.html', paged(WORDS.map((text) => text.replace(/[^ ]/g, 'x').slice(0, 400)))),
    ];
    expect(hostile.tags).toEqual(tame.tags);
    expect(hostile.attributes).toEqual(tame.attributes);
  });

  it('in PDF: printed, with nothing to run or follow', async (ctx) => {
    if (!hasPdf) return ctx.skip(MISSING_PDF);
    const pages = Array.from({ length: 10 }, (_, k) => ({
      width: 210,
      height: 297,
      items: WORDS.slice(50 * k, 50 * k + 50).map((text, i) =>
        pageWords([10, 285 - 5 * i], 3, oneLine(text, 60)),
      ),
    }));
    const path = join(folder, 'words.pdf');
    writeFileSync(path, await pdfPrinter()({ title: WORDS[0] ?? '', pages }));
    expect(execFileSync('pdfinfo', [path], { encoding: 'utf8' })).toMatch(/JavaScript: +no/);
    expect(execFileSync('pdfinfo', ['-url', path], { encoding: 'utf8' })).not.toMatch(/http/);
    const text = execFileSync('pdftotext', ['-layout', path, '-'], { encoding: 'utf8' });
    for (const shown of ['<script>alert(1)</script>', ') Tj ET (', '=HYPERLINK("http://x.invalid","y")'])
      expect(text).toContain(shown);
    expect(text).not.toMatch(/[^\n\f\P{Cc}]/u);
  });

  it('in JSON: themselves', (ctx) => {
    if (!python) return ctx.skip(MISSING_PYTHON);
    const lone = /[\ud800-\udfff]/;
    const kept = WORDS.filter((text) => !lone.test(text));
    expect(foreign<string[]>('words.json', JSON.stringify(kept))).toEqual(kept);
  });

  it('on a terminal: one line each and no control', () => {
    for (const text of WORDS)
      expect(plain(text), JSON.stringify(text)).not.toMatch(/\p{Cc}|\p{Cf}|\p{Zl}|\p{Zp}/u);
  });

  it('as file names: plain, short, all different and none of a device', () => {
    const names = safeNames(WORDS);
    for (const name of names) {
      expect(name).toMatch(/^[a-z0-9]+(-[a-z0-9]+)*$/);
      expect(name.length).toBeLessThanOrEqual(48);
      expect(name).not.toMatch(/^(con|prn|aux|nul|com\d|lpt\d)$/);
    }
    expect(new Set(names).size).toBe(names.length);
    expect(safeName('CON')).not.toBe('con');
  });
});

import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { writeSet } from 'pan-cli/write/index.js';
import { readStl } from 'pan-core/drawing/index.js';
import { beforeAll, describe, expect, it } from 'vitest';
import { setOf, textAt } from '../interop/dxf-cut-set.js';
import { hasReader, MISSING_READER, type ReadDrawing, readDrawings } from '../interop/dxf-reader.js';
import { sampleDesign } from '../sample-design.js';

const HOSTILE = [
  'wall\n  0\nLINE\n  8\nthrough',
  '../../../tmp/x',
  'con',
  '=HYPERLINK("http://x")',
  '-1+2',
  'a,b"c',
  '\u202ereversed\u0000',
  '<script>',
  '%%u\\U+0041^J',
];

/** One set for each word is enough: the same words give the same files. */
const sets = new Map<string, ReturnType<typeof setOf>>();
const hostile = (words: string) => {
  const set = sets.get(words) ?? written(words);
  sets.set(words, set);
  return set;
};

const written = (words: string) =>
  setOf(
    sampleDesign((d) => {
      d.title = words;
      for (const wing of d.pan.wings) wing.name = words;
      for (const baffle of d.baffles) baffle.name = words;
    }),
    'fail',
  );

type Files = Awaited<ReturnType<typeof setOf>>;

const drawingsOf = (files: Files): readonly string[] =>
  files.flatMap((f) => (f.path.endsWith('.dxf') && typeof f.content === 'string' ? [f.content] : []));

/** Every drawing of every set, read by one start of the reader. */
const read = new Map<string, readonly ReadDrawing[]>();
beforeAll(async () => {
  if (!hasReader()) return;
  const texts = await Promise.all(
    ['plain', ...HOSTILE].map(async (words) => drawingsOf(await hostile(words))),
  );
  const all = readDrawings(texts.flat());
  let at = 0;
  for (const [i, words] of ['plain', ...HOSTILE].entries()) {
    const count = texts[i]?.length ?? 0;
    read.set(words, all.slice(at, at + count));
    at += count;
  }
});

describe.each(HOSTILE)('a design whose every name is %j', (words) => {
  it('is a set of plain file names that can be written', async () => {
    const files = await hostile(words);
    const root = mkdtempSync(join(tmpdir(), 'pan-hostile-'));
    try {
      expect(writeSet(join(root, 'out'), files, false).files).toBe(files.length);
      expect(readdirSync(root)).toEqual(['out']);
    } finally {
      rmSync(root, { recursive: true });
    }
  });

  it('draws the same entities as a plain one, and its solids read back', async (ctx) => {
    for (const { path, content } of await hostile(words))
      if (path.endsWith('.stl') && content instanceof Uint8Array)
        expect(readStl(content).length).toBeGreaterThan(0);
    if (!hasReader()) return ctx.skip(MISSING_READER);
    const shapes = (set: readonly ReadDrawing[] = []) =>
      set.map((d) => d.entities.filter((e) => e.type !== 'TEXT'));
    const drawings = read.get(words) ?? [];
    expect(drawings.length).toBeGreaterThan(10);
    expect(drawings.flatMap((d) => [...d.errors, ...d.fixes])).toEqual([]);
    expect(shapes(drawings)).toEqual(shapes(read.get('plain')));
  });

  it('is no formula, no new row and no control character in its lists', async () => {
    const files = await hostile(words);
    for (const path of ['3-bench/drill-table.csv', '5-buy/cut-list.csv']) {
      const rows = textAt(files, path).trimEnd().split('\r\n');
      const plainRows = textAt(await hostile('plain'), path)
        .trimEnd()
        .split('\r\n');
      expect(rows).toHaveLength(plainRows.length);
      for (const row of rows) expect(row).not.toMatch(/(^|,)"?[=+@]/);
    }
    for (const { path, content } of files) {
      if (path.endsWith('.txt')) expect(content).not.toMatch(/[^\n\P{Cc}]|[\u202a-\u202e\u2066-\u2069]/u);
    }
  });
});

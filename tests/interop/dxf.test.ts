import { barePartDxf, LAYERS, partDxf } from 'pan-core/drawing/index.js';
import type { Part } from 'pan-core/sheet/index.js';
import { describe, expect, it } from 'vitest';
import { plate, polygon, strip } from './dxf-parts.js';
import { hasReader, MISSING_READER, type ReadDrawing, type ReadEntity, readDrawings } from './dxf-reader.js';

const reader = hasReader();
const SAYING = 'Prove a mock-up on block and car first; check the 100 mm square.';

const readOne = (text: string): ReadDrawing => readDrawings([text])[0] as ReadDrawing;
const draw = (part: Part, sentences = [SAYING], title = 'Bench pan'): string =>
  partDxf(part, { title, warning: null, sentences });
const onLayer = (drawing: ReadDrawing, layer: string): readonly ReadEntity[] =>
  drawing.entities.filter((e) => e.layer === layer);
const words = (drawing: ReadDrawing): string =>
  onLayer(drawing, 'note')
    .map((e) => e.text ?? '')
    .join('\n');

describe('drawings read back by Debian python3-ezdxf', () => {
  it('have no errors and need no fixes, full and bare', (ctx) => {
    if (!reader) ctx.skip(MISSING_READER);
    const parts = [plate(), strip()];
    const texts = parts.flatMap((part) => [
      draw(part),
      barePartDxf(part, { title: 'x', warning: 'NOT READY TO CUT: floor', sentences: [SAYING] }),
    ]);
    for (const drawing of readDrawings(texts)) {
      expect(drawing.errors).toEqual([]);
      expect(drawing.fixes).toEqual([]);
      expect(drawing.version).toBe('AC1015');
      expect(drawing.units).toBe(4);
      expect(drawing.paper).toBe(0);
      expect(drawing.layers).toEqual(['0', ...LAYERS.map((l) => l.name)].sort());
    }
  });

  it('keep arcs as arcs: a round corner of 20 mm has bulge tan(90°/4)', (ctx) => {
    if (!reader) ctx.skip(MISSING_READER);
    const [outline] = onLayer(readOne(draw(plate())), 'through');
    const bulges = (outline?.points ?? []).map((p) => p[2]).filter((b) => b !== 0);
    expect(outline?.closed).toBe(true);
    expect(bulges).toHaveLength(4);
    // DXF reference, LWPOLYLINE group 42: 0.414214 for 90°; 12 decimals are written.
    for (const b of bulges) expect(Math.abs(b - Math.SQRT2 + 1)).toBeLessThan(1e-12);
  });

  it('close every cut loop, round and not, and put each thing on its layer', (ctx) => {
    if (!reader) ctx.skip(MISSING_READER);
    const part = strip();
    const drawing = readOne(draw(part));
    const cuts = onLayer(drawing, 'through');
    expect(cuts.filter((e) => e.type === 'CIRCLE')).toHaveLength(3);
    expect(cuts.filter((e) => e.type === 'LWPOLYLINE' && e.closed)).toHaveLength(3);
    expect(cuts).toHaveLength(6);
    expect(onLayer(drawing, 'fold').map((e) => e.points)).toEqual(
      part.folds.map((f) => [
        [...f.from, 0],
        [...f.to, 0],
      ]),
    );
    expect(
      onLayer(readOne(barePartDxf(part, { title: 'x', warning: null, sentences: [SAYING] })), 'through'),
    ).toEqual(cuts);
    expect(
      readOne(barePartDxf(part, { title: 'x', warning: null, sentences: [SAYING] })).entities,
    ).toHaveLength(cuts.length);
  });

  it('carry a 100 mm check square clear of the part', (ctx) => {
    if (!reader) ctx.skip(MISSING_READER);
    const squares = onLayer(readOne(draw(strip())), 'mark').filter((e) => e.closed);
    expect(squares).toHaveLength(1);
    const points = squares[0]?.points ?? [];
    const xs = points.map((p) => p[0]);
    const ys = points.map((p) => p[1]);
    expect(Math.max(...xs) - Math.min(...xs)).toBe(100);
    expect(Math.max(...ys) - Math.min(...ys)).toBe(100);
    expect(Math.max(...ys)).toBeLessThan(-1);
  });

  it('say the fold angle, direction and inside radius beside the fold', (ctx) => {
    if (!reader) ctx.skip(MISSING_READER);
    const drawing = readOne(draw(strip()));
    const label = drawing.entities.find((e) => e.text?.startsWith('fold 2'));
    expect(label?.text).toBe('fold 2: down 68.8°, inside R 5 mm');
    expect(Math.abs((label?.turned ?? 0) - 90)).toBeLessThan(1e-9);
    expect(words(drawing)).toContain(SAYING);
    expect(words(drawing)).toContain('Transfer the holes from the block.');
  });

  it.for([
    ['a line break and an entity', 'pan\n  0\nLINE\n  8\nthrough'],
    ['carriage returns', 'pan\r\n  0\r\nEOF\r\n'],
    ['separators of lines and paragraphs', 'pan\u2028  0\u2029LINE\u0085x'],
    ['control characters', 'a\u0000b\u0007c\u001bd\u009fe'],
    ['codes of the format', '100%%c %%u50% ^J^M \\U+0041 \\P{\\H3;x}'],
    ['letters of other scripts', 'Ölwanne Ø12 90° ±1 油 \ud83d\ude97 \ud800'],
    ['a million characters', 'long title '.repeat(100_000)],
  ])('hold %s as words only', ([, title], ctx) => {
    if (!reader) ctx.skip(MISSING_READER);
    const clean = readOne(draw(plate(), [SAYING, title ?? ''], title));
    const plain = readOne(draw(plate(), [SAYING, 'x'], 'x'));
    expect(clean.errors).toEqual([]);
    expect(clean.fixes).toEqual([]);
    const shapes = (d: ReadDrawing): readonly ReadEntity[] => d.entities.filter((e) => e.type !== 'TEXT');
    expect(shapes(clean)).toEqual(shapes(plain));
    expect(words(clean)).not.toMatch(/[^\n\P{Cc}]/u);
  });

  it('show signs, percent and carets as the reader of the drawing typed them', (ctx) => {
    if (!reader) ctx.skip(MISSING_READER);
    const typed = 'Ø12 90° ±1 ö 油 100% ^J a\\b';
    expect(words(readOne(draw(plate(), [typed])))).toContain(typed);
    expect(words(readOne(draw(plate(), ['5%%c 7%° %%%'])))).toContain('5% %c 7% ° % % %');
  });

  const hole = (x: number, y: number, diameter: number) => ({ at: [x, y] as const, diameter, what: 'bolt' });
  const square = (x: number, y: number, side: number) =>
    polygon([
      [x, y],
      [x, y + side],
      [x + side, y + side],
      [x + side, y],
    ]);
  const uncuttable: readonly (readonly [string, Partial<Part>, RegExp])[] = [
    ['a place that is no number', { holes: [hole(Number.NaN, 1, 9)] }, /no number/],
    ['a hole turned inside out', { holes: [hole(50, 50, -9)] }, /./],
    ['a hole twice', { holes: [hole(50, 50, 9), hole(50, 50, 9)] }, /hole 2 .* hole 1/],
    ['a hole in a hole', { holes: [hole(50, 50, 9), hole(50, 50, 20)] }, /lie in each other/],
    ['a hole through the edge', { holes: [hole(2, 100, 9)] }, /breaks through the outline/],
    ['a hole that only touches the edge', { holes: [hole(4.5, 100, 9)] }, /breaks through the outline/],
    ['a hole beside the plate', { holes: [hole(-50, 100, 9)] }, /outside the outline/],
    ['a hole into an opening', { holes: [hole(100, 120, 9)], openings: [square(100, 100, 40)] }, /runs into/],
    [
      'a hole in an opening',
      { holes: [hole(120, 120, 9)], openings: [square(100, 100, 40)] },
      /in each other/,
    ],
    ['an outline that does not close', { outline: square(0, 0, 300).slice(0, 3) }, /outline does not close/],
    [
      'an outline that crosses itself',
      {
        outline: polygon([
          [0, 0],
          [300, 200],
          [300, 0],
          [0, 200],
        ]),
      },
      /runs into itself/,
    ],
  ];
  it.each(uncuttable)('refuse %s', (_, change, message) => {
    expect(() => draw(plate(change))).toThrow(message);
    expect(() => barePartDxf(plate(change), { title: 'x', warning: null, sentences: [] })).toThrow(message);
  });

  it('are the same bytes every time', () => {
    expect(draw(strip())).toBe(draw(strip()));
    expect(draw(strip())).toMatch(/^[\x20-\x7e\r\n]*$/);
  });
});

import type { Design } from 'pan-core/design/index.js';
import { PanError } from 'pan-core/errors/index.js';
import { pathBox } from 'pan-core/geometry/index.js';
import { buildPan, floorProfile } from 'pan-core/pan/index.js';
import { edgePrep, type Part, sheetFindings, shopFindings } from 'pan-core/sheet/index.js';
import { panSeams, panSkin } from 'pan-core/weld/index.js';
import { describe, expect, test } from 'vitest';
import { partsOf, setOf, textAt } from '../interop/dxf-cut-set.js';
import { expectWithin } from '../numbers.js';
import { randomDesign } from '../random-design.js';
import { type Mutable, sampleDesign } from '../sample-design.js';
import { trough as plainTrough } from '../sheet-trial.js';

/** A trough 900 long, 120 deep, 200 wide, of 2 mm sheet bent at 3 mm. */
const trough = (change: (d: Mutable<Design>) => void): Design =>
  plainTrough((d) => {
    d.pan.floor = [
      [900, 120],
      [0, 120],
    ];
    d.baffles = [];
    change(d);
  });

const piecesOf = (parts: readonly Part[], name: string): readonly Part[] =>
  parts.filter((p) => p.name === name || p.name.startsWith(`${name} piece`));

const seam = (part: string, at: number, way: 'across' | 'lengthwise' = 'across') => ({
  usual: true,
  whole: [],
  seams: [{ part, way, at, name: null as string | null }],
});

const refusal = (split: ReturnType<typeof seam>): string => {
  try {
    partsOf(
      trough((d) => {
        d.drain = { at: [62, 0], thread: { diameter: 18, pitch: 1.5 }, bung: 28, plugBelow: 12 };
        d.pan.joints.split = split;
      }),
    );
  } catch (error) {
    if (error instanceof PanError) return error.problems.map((p) => `${p.message} ${p.advice}`).join(' ');
    throw error;
  }
  return '';
};

describe('a belly longer than the sheet', () => {
  const whole = piecesOf(partsOf(trough(() => {})), 'belly');
  const small = trough((d) => {
    d.shop = { ...d.shop, sheet: [500, 400], edge: 10 };
  });
  const pieces = piecesOf(partsOf(small), 'belly');

  test('is cut into the fewest pieces that the sheet holds', () => {
    expect(whole).toHaveLength(1);
    // 480 mm of room: 1130 mm and more need three.
    expect(pieces).toHaveLength(Math.ceil(whole[0]!.flat[0] / 480));
    for (const piece of pieces) expect(piece.flat[0]).toBeLessThanOrEqual(480);
  });

  test('loses a root gap at each seam and nothing else', () => {
    const gap = edgePrep('butt', 2, 'mild steel').gap!;
    expect(gap).toBeGreaterThan(0);
    const lost = (pieces.length - 1) * gap;
    const sum = (size: (p: Part) => number): number => pieces.reduce((s, p) => s + size(p), 0);
    expectWithin(
      sum((p) => p.flat[0]),
      whole[0]!.flat[0] - lost,
      1e-9,
      'length',
    );
    expectWithin(
      sum((p) => p.area),
      whole[0]!.area - 200 * lost,
      1e-6,
      'area',
    );
    expect(sum((p) => p.folds.length)).toBe(whole[0]!.folds.length);
    expect(sum((p) => p.holes.length)).toBe(whole[0]!.holes.length);
  });

  test('is cut well away from its bends, and every cut closes', () => {
    for (const piece of pieces) {
      expect(shopFindings(piece).filter((f) => f.severity === 'fault')).toEqual([]);
      for (const fold of piece.folds) {
        const at = fold.from[0];
        const { min, max } = pathBox(piece.outline);
        const ends = piece.joins!.map(({ side }) => (side === 'left' ? at - min[0] : max[0] - at));
        for (const away of ends) expect(away - fold.allowance / 2).toBeGreaterThan(15);
      }
    }
  });

  test('has each seam once in the weld plan, as long as the pan is wide, and carries its root gap', () => {
    const model = buildPan(small);
    const seams = panSeams(model, panSkin(model), partsOf(small)).filter((s) => s.step === 'pieces');
    const own = seams.filter((s) => s.name.startsWith('belly'));
    expect(own.map((s) => s.name)).toEqual(['belly seam 1', 'belly seam 2']);
    for (const { length, joint, prep, between } of own) {
      expectWithin(length, 200, 1e-9, 'length');
      expect([joint, prep.gap]).toEqual(['butt', edgePrep('butt', 2, 'mild steel').gap]);
      expect(pieces.map((p) => p.name)).toEqual(expect.arrayContaining([...between]));
    }
  });
});

test('weld order, cut list, drawings and manifest speak of the seam', async () => {
  const design = sampleDesign((d) => {
    d.shop = { ...d.shop, sheet: [700, 500], edge: 10 };
  });
  const files = await setOf(design, 'pass');
  expect(textAt(files, '4-weld/order.txt')).toMatch(/belly seam: butt outside.*root gap 1 mm/);
  expect(textAt(files, '5-buy/cut-list.csv')).toContain('belly piece 2 of 2 (belly seam)');
  const drawing = textAt(files, '2-laser/belly-piece-1-of-2.dxf');
  expect(drawing).toMatch(/"belly seam", butt to belly piece 2 of 2; root gap 1\.0 mm/);
  expect(drawing).toMatch(/Edges, butt: root gap 1 mm \(taken off the pattern/);
  const rows = JSON.parse(textAt(files, 'manifest.json')).parts;
  const row = rows.find((r: { name: string }) => r.name === 'belly piece 2 of 2');
  expect(row.joined_to).toMatchObject([{ seam: 'belly seam', piece: 'belly piece 1 of 2', edge: 'left' }]);
});

test('a seam under a lid is closed off by it', () => {
  const design = sampleDesign((d) => {
    // The lid spans 110 to 320 of the floor; the blank begins with 172 of rear wall from x 32 on.
    d.pan.joints.split = seam('belly', 172 + 145);
  });
  const model = buildPan(design);
  const [found] = panSeams(model, panSkin(model), partsOf(design)).filter((s) => s.step === 'pieces');
  expect(found?.closedBy).toBe('lid');
});

describe('what the design says of seams', () => {
  test('a station is kept to, under its own name', () => {
    const parts = partsOf(
      trough((d) => {
        d.pan.joints.split = {
          usual: true,
          whole: [],
          seams: [{ ...seam('belly', 400).seams[0]!, name: 'mid' }],
        };
      }),
    );
    const [first, second] = piecesOf(parts, 'belly');
    expectWithin(first!.flat[0], 400 - 0.5, 1e-9, 'first');
    expect(first!.joins![0]).toMatchObject({ seam: 'mid', other: second!.name, at: 400, why: 'asked' });
  });

  test('a part that may not be cut apart stays whole and fails for the sheet', () => {
    const design = trough((d) => {
      d.shop = { ...d.shop, sheet: [500, 400], edge: 10 };
      d.pan.joints.split = { usual: true, whole: ['Belly'], seams: [] };
    });
    const parts = partsOf(design);
    expect(parts.map((p) => p.name)).toContain('belly');
    expect(piecesOf(parts, 'side left').length).toBeGreaterThan(1);
    const found = sheetFindings(design, floorProfile(design), parts).find((f) => f.id === 'part_on_sheet');
    expect(found).toMatchObject({ status: 'fail' });
    expect(found?.try).toMatch(/pan\.joints\.split keeps it whole/);
  });

  test('a seam along a bend, through a hole, off the blank or in no part is refused by name', () => {
    expect(refusal(seam('belly', 118))).toMatch(/through the rear bend/);
    expect(refusal(seam('belly', 180))).toMatch(/through drain bung.*past it/);
    expect(refusal(seam('belly', 2000))).toMatch(/lies off its blank/);
    expect(refusal(seam('bely', 200))).toMatch(/Did you mean belly/);
  });
});

test('folds longer than the brake are cut across, and the plan says that the seam crosses them', () => {
  const design = trough((d) => {
    d.shop.brake = { longest: 150, die: null, punch: null };
  });
  const pieces = piecesOf(partsOf(design), 'belly');
  expect(pieces).toHaveLength(2);
  for (const { folds, joins } of pieces) {
    for (const { from, to } of folds) expect(Math.abs(to[1] - from[1])).toBeLessThanOrEqual(150);
    expect(joins![0]).toMatchObject({ why: 'brake', crosses: ['the rear bend', 'the front bend'] });
  }
});

/** What a cut of its gap takes away: the gap over the seam's length, a little more or less where the edge is aslant. */
const expectWhole = (pieces: readonly Part[], whole: Part, what: string): void => {
  const joins = pieces.flatMap((p) => p.joins ?? []);
  const lost = joins.reduce((s, j) => s + (j.gap * j.length) / 2, 0);
  const sum = (size: (p: Part) => number): number => pieces.reduce((s, p) => s + size(p), 0);
  const slanted = joins.length * (joins[0]?.gap ?? 0) ** 2 * 4;
  expectWithin(
    sum((p) => p.area),
    whole.area - lost,
    1e-9 * whole.area + slanted,
    `${what}, area`,
  );
  expect(
    sum((p) => p.holes.length),
    what,
  ).toBe(whole.holes.length);
  const names = pieces.flatMap((p) => p.folds.map((f) => f.name));
  expect([...new Set(names)].sort(), what).toEqual([...new Set(whole.folds.map((f) => f.name))].sort());
  for (const { other, seam: name, length } of joins) {
    const back = pieces
      .find((p) => p.name === other)
      ?.joins?.filter((j) => j.seam === name && j.length === length);
    expect(back?.length, `${what}, ${name} from the other side`).toBeGreaterThan(0);
  }
};

test('random pans on short sheets and brakes: pieces fit and make the whole (seeds 1 to 24)', () => {
  let split = 0;
  for (let seed = 1; seed <= 24; seed++) {
    const random = { ...randomDesign(seed), baffles: [] };
    const plain: Design = { ...random, engine: { ...random.engine, railHoles: [] } };
    try {
      const parts = partsOf({
        ...plain,
        shop: { ...plain.shop, sheet: [520, 420], brake: { longest: 180, die: null, punch: null } },
      });
      for (const one of partsOf(plain)) {
        const pieces = parts.filter((p) => p.name.startsWith(`${one.name} piece `));
        if (pieces.length === 0) continue;
        split++;
        expectWhole(pieces, one, `seed ${seed}, ${one.name}`);
        for (const piece of pieces) {
          expect(Math.max(...piece.flat), `seed ${seed}, ${piece.name}`).toBeLessThanOrEqual(500);
          expect(shopFindings(piece).filter((f) => f.severity === 'fault')).toEqual([]);
        }
      }
    } catch (error) {
      if (!(error instanceof PanError)) throw error;
    }
  }
  expect(split).toBeGreaterThan(30);
});

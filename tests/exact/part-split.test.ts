import type { Design } from 'pan-core/design/index.js';
import { PanError } from 'pan-core/errors/index.js';
import { buildPan, floorProfile } from 'pan-core/pan/index.js';
import { type Part, sheetFindings } from 'pan-core/sheet/index.js';
import { panSeams, panSkin, weldSteps } from 'pan-core/weld/index.js';
import { describe, expect, test } from 'vitest';
import { changed, exampleText, read } from '../design-text.js';
import { expectWithin } from '../numbers.js';
import { wholeCut } from '../properties/sheet-design.js';
import { randomDesign } from '../random-design.js';
import { type Mutable, sampleDesign } from '../sample-design.js';

const onSheet = (sheet: readonly [number, number], change: (d: Mutable<Design>) => void = () => {}): Design =>
  sampleDesign((d) => {
    d.shop.sheet = [...sheet];
    change(d);
  });

const named = (parts: readonly Part[], name: string): Part => {
  const found = parts.find((part) => part.name === name);
  if (found === undefined) throw new Error(`no ${name} among ${parts.map((p) => p.name).join(', ')}`);
  return found;
};

const sum = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0);

/** Pieces laid side by side make the whole again: area, length, holes and folds; each seam is cut twice. */
const expectWhole = (pieces: readonly Part[], whole: Part, what: string): void => {
  expectWithin(sum(pieces.map((p) => p.area)), whole.area, 1e-12 * whole.area, `${what}, area`);
  expectWithin(sum(pieces.map((p) => p.flat[0])), whole.flat[0], 1e-9, `${what}, length`);
  const seams = sum(pieces.flatMap((p) => (p.seams ?? []).map((s) => s.length)));
  expectWithin(sum(pieces.map((p) => p.cutLength)), whole.cutLength + seams, 1e-8, `${what}, cuts`);
  expect(pieces.flatMap((p) => p.holes)).toHaveLength(whole.holes.length);
  expect(pieces.flatMap((p) => p.folds.map((f) => f.name))).toEqual(whole.folds.map((f) => f.name));
};

describe('a part that the sheet is too short for', () => {
  const whole = named(wholeCut(onSheet([2000, 1000])), 'belly');
  const design = onSheet([720, 500]);
  const parts = wholeCut(design);
  const pieces = parts.filter((part) => part.name.startsWith('belly piece'));

  test('is cut in the fewest pieces that fit, and they make the whole', () => {
    const room = 720 - 2 * design.shop.edge;
    expect(pieces).toHaveLength(Math.ceil(whole.flat[0] / room));
    for (const piece of pieces) expect(piece.flat[0]).toBeLessThanOrEqual(room);
    expectWhole(pieces, whole, 'belly');
  });

  test('the seam keeps eight thicknesses off every bend and hole', () => {
    const seam = pieces[0]?.flat[0] ?? Number.NaN;
    for (const { from, allowance } of whole.folds)
      expect(Math.abs(from[0] - seam) - allowance / 2).toBeGreaterThanOrEqual(8 * 3 - 1e-9);
    for (const { at, diameter } of whole.holes)
      expect(Math.abs(at[0] - seam) - diameter / 2).toBeGreaterThanOrEqual(8 * 3 - 1e-9);
    const found = sheetFindings(design, floorProfile(design), parts);
    expect(found.find((f) => f.id === 'seam_place')?.status).toBe('pass');
    expect(found.find((f) => f.id === 'part_on_sheet')?.because).toContain('fits the sheet');
  });

  test('the weld plan has the seam once, first of all and as long as the part is wide', () => {
    const model = buildPan(design);
    const seams = panSeams(model, panSkin(model), parts).filter((s) => s.step === 'flat');
    expect(seams.map((s) => s.name)).toContain('belly piece 1 to belly piece 2');
    expect(seams).toHaveLength(parts.flatMap((p) => p.seams ?? []).length / 2);
    expectWithin(seams[0]?.length, 190, 1e-9, 'seam');
    expect(weldSteps(design, seams)[0]?.seams).toHaveLength(seams.length);
  });

  test('both pieces say on their rim what they are welded to', () => {
    expect(pieces[0]?.marks.map((m) => m.what)).toContain('weld to belly piece 2');
    expect(pieces[1]?.marks.map((m) => m.what)).toContain('weld to belly piece 1');
  });

  test('stays whole where the design says to split nothing, and the check says what to do', () => {
    const kept = onSheet([700, 500], (d) => {
      d.pan.joints.split = [];
    });
    const found = sheetFindings(kept, floorProfile(kept), wholeCut(kept)).find(
      (f) => f.id === 'part_on_sheet',
    );
    expect(found?.status).toBe('fail');
    expect(found?.try).toContain('pan.joints.split');
  });
});

test('random pans on short sheets: pieces fit and make the whole (seeds 1 to 60)', () => {
  let split = 0;
  for (let seed = 1; seed <= 60; seed++) {
    const random = { ...randomDesign(seed), baffles: [] };
    const plain: Design = { ...random, engine: { ...random.engine, railHoles: [] } };
    try {
      const whole = wholeCut(plain);
      const parts = wholeCut({ ...plain, shop: { ...plain.shop, sheet: [520, 420] } });
      for (const one of whole) {
        const pieces = parts.filter((p) => p.name.startsWith(`${one.name} piece `));
        if (pieces.length === 0) continue;
        split++;
        expectWhole(pieces, one, `seed ${seed}, ${one.name}`);
        for (const piece of pieces) expect(piece.flat[0]).toBeLessThanOrEqual(500);
      }
    } catch (error) {
      if (!(error instanceof PanError)) throw error;
    }
  }
  expect(split).toBeGreaterThan(60);
});

describe('a seam that the design asks for', () => {
  const asked = (along: number, part = 'belly'): Promise<readonly Part[]> =>
    read(
      changed(
        exampleText('two-wings'),
        'joints: {allowance: k}',
        `joints: {split: [{part: ${part}, along: ${along}}]}`,
      ),
    ).then(({ design }) => wholeCut(design));

  test('is made there', async () => {
    expectWithin(named(await asked(300), 'belly piece 1').flat[0], 300, 1e-9, 'first piece');
  });

  test('in a bend is refused with the bend’s name', async () => {
    const { folds } = named(
      await read(exampleText('two-wings')).then(({ design }) => wholeCut(design)),
      'belly',
    );
    await expect(asked(folds[1]!.from[0])).rejects.toThrow(`lies in the ${folds[1]!.name} bend`);
  });

  test('beyond the part, or in a part that is none, is refused', async () => {
    await expect(asked(5000)).rejects.toThrow(/is not on it/);
    await expect(asked(100, 'keel')).rejects.toThrow(/"keel" is no part/);
  });
});

import { cleaningFor, laidLength, runOrder, type Seam, seamHeat } from 'pan-core/weld/index.js';
import { describe, expect, it } from 'vitest';
import { setOf, textAt } from '../interop/dxf-cut-set.js';
import { expectWithin } from '../numbers.js';
import { sampleDesign } from '../sample-design.js';

const seam: Seam = {
  number: 1,
  name: 'a to b',
  between: ['a', 'b'],
  joint: 'fillet',
  side: 'outside',
  run: 'continuous',
  length: 500,
  lines: [],
  size: 3,
  step: 'shell',
  closedBy: null,
  prep: { gap: 0, fit: '', TIG: '', MIG: '', source: '' },
};

describe('heat of a seam', () => {
  it('is η·60·V·I/(1000·v) of its length: 3 mm aluminium by TIG, 120 A, 14 V, 150 mm/min', () => {
    const [tig] = seamHeat(seam, 'aluminium 5052-H32', 3).filter(({ process }) => process === 'TIG');
    // Welding heat input, η 0.6 for TIG.
    const perMm = (0.6 * 60 * 14 * 120) / (1000 * 150);
    expectWithin(tig?.perMm, perMm, 1e-12, 'kJ/mm');
    expectWithin(tig?.total, 500 * perMm, 1e-9, 'kJ');
  });

  it('of a stitched seam is that of the half that is laid', () => {
    expect(laidLength({ ...seam, run: 'stitch' })).toBe(250);
    const [whole, half] = [seam, { ...seam, run: 'stitch' as const }].map(
      (s) => seamHeat(s, 'mild steel', 1.5)[0]?.total ?? 0,
    );
    expectWithin(half, whole! / 2, 1e-9, 'kJ');
  });

  it('is not made up for a material nobody knows', () =>
    expect(seamHeat(seam, 'unobtainium', 3)).toEqual([]));
});

describe('runs round a flange', () => {
  const sides = [
    { name: 'front', length: 180 },
    { name: 'rear', length: 190 },
    { name: 'left', length: 623 },
    { name: 'right', length: 623 },
  ];
  const runs = runOrder(sides, 50);

  it.each(sides)('cover the $name once, each no longer than 50 mm', ({ name, length }) => {
    const own = runs.filter((run) => run.side === name).sort((a, b) => a.from - b.from);
    expectWithin(own[0]?.from, -length / 2, 1e-9, 'start');
    expectWithin(own[own.length - 1]?.to, length / 2, 1e-9, 'end');
    own.slice(1).forEach((run, i) => {
      expectWithin(run.from, own[i]?.to ?? Number.NaN, 1e-9, 'joint');
    });
    for (const run of own) expect(run.to - run.from).toBeLessThanOrEqual(50 + 1e-9);
  });

  it('go to another side every time, from the middle outwards', () => {
    runs.slice(1).forEach((run, i) => {
      expect(run.side).not.toBe(runs[i]?.side);
    });
    const left = runs.filter((run) => run.side === 'left').map((run) => Math.abs(run.from + run.to) / 2);
    left.slice(1).forEach((away, i) => {
      expect(away).toBeGreaterThanOrEqual((left[i] ?? 0) - 1e-9);
    });
  });
});

describe('the weld plan of a set', () => {
  const files = setOf(sampleDesign(), 'pass');

  it('lists every seam of the manifest with filler, heat and what closes it off', async () => {
    const { seams } = JSON.parse(textAt(await files, 'manifest.json'));
    const rows = textAt(await files, '4-weld/seams.csv')
      .split('\r\n')
      .slice(1);
    expect(seams.length).toBeGreaterThan(8);
    seams.forEach((row: Record<string, unknown>, i: number) => {
      expect(rows[i]).toContain(String(row.name));
      expect(row.filler).toMatch(/4043/);
      // Half the square of the leg or depth times length and density, 2.68 g/cm³ for 5052.
      const laid = Number(row.length_mm) * (row.run === 'stitch' ? 0.5 : 1);
      expectWithin(Number(row.filler_g), 0.5 * Number(row.size_mm) ** 2 * laid * 2.68e-3, 1e-3, 'g');
      expect(Number(row.heat_TIG_kJ)).toBeGreaterThan(Number(row.heat_MIG_kJ));
    });
    expect(seams.map((row: { closed_by: unknown }) => row.closed_by)).toContain(
      'the block, once the face is flat',
    );
  });

  it('says the order of the flange’s runs, its flatness and how to find that out, and what must be clean', async () => {
    const text = textAt(await files, '4-weld/order.txt');
    expect(text).toMatch(/1 front .*; 2 rear .*; 3 left .*; 4 right/);
    // 0.1 mm in 300 over a rail of 690 mm.
    expect(text).toContain('0.10 mm in any 300 mm, 0.23 mm over the flange’s 690 mm');
    expect(text).toContain('feeler');
    for (const { what } of cleaningFor('aluminium 5052-H32')) expect(text).toContain(what);
    expect(text).not.toContain('mill scale');
  });

  it('puts cautions beside the mock-ups', async () => {
    const text = textAt(await files, '1-mock-up/cautions.txt');
    expect(text).toContain('Never work under an engine held only by a hoist');
    expect(text).toContain('Never chlorinated cleaner near an arc');
  });
});

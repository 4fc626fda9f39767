import {
  insideSolid,
  meshVolume,
  outsideSolid,
  partsInPlace,
  plateSolid,
  readStl,
  writeStl,
} from 'pan-core/drawing/index.js';
import { circlePath } from 'pan-core/geometry/index.js';
import { buildPan, type PanModel } from 'pan-core/pan/index.js';
import { panSkin } from 'pan-core/weld/index.js';
import { describe, expect, it } from 'vitest';
import { expectWithin } from '../numbers.js';
import { randomPan } from '../random-design.js';
import { sampleDesign, stepDesign } from '../sample-design.js';
import { partsOf } from './dxf-cut-set.js';
import { plate } from './dxf-parts.js';
import { checkSolid, hasChecker, MISSING_CHECKER, NO_FAULTS, stlVolume, unpaired } from './stl-checker.js';
import { pans } from './stl-pans.js';

const checker = hasChecker();

/** Volume of the cells below the rail, nothing taken off for what stands in them, mm³. */
const belowRail = (model: PanModel): number =>
  model.cells.reduce((sum, cell, i) => sum + (cell.zone === 'crankcase' ? 0 : (model.volumes[i] ?? 0)), 0);

// A coordinate of up to 690 mm in 32 bits is off by at most 3e-5 mm; over the shortest side of 35 mm that
// is 1e-6 of the volume at worst, and errors of many corners mostly cancel.
const FLOAT32 = 1e-7;

describe.each(pans)('%s', (_, design) => {
  const model = buildPan(design);
  const skin = panSkin(model);
  const inside = writeStl(insideSolid(skin), 'inside');
  const outside = writeStl(outsideSolid(skin, design.pan.sheet.thickness), 'outside');

  it('the inside has the model’s volume to 32 bits', () => {
    expectWithin(stlVolume(inside), belowRail(model), FLOAT32 * belowRail(model), 'volume, mm³');
  });

  it('every edge of inside and outside is run once each way, and the size fits the count', () => {
    for (const file of [inside, outside]) {
      expect(unpaired(file)).toEqual([]);
      expect(file.length).toBe(84 + 50 * (readStl(file).length / 9));
    }
  });

  it('the independent checker finds one solid and no fault', (ctx) => {
    if (!checker) ctx.skip(MISSING_CHECKER);
    for (const file of [inside, outside]) {
      const found = checkSolid(file);
      expect(found.faults).toEqual(NO_FAULTS);
      expect(found.parts).toBe(1);
    }
  });

  it('the outside never rises over the rail and stands out by the thickness below and beside', () => {
    const box = (file: Uint8Array): number[][] => {
      const c = readStl(file);
      return [0, 1, 2].map((axis) => {
        const values = [...c].filter((_, i) => i % 3 === axis);
        return [Math.min(...values), Math.max(...values)];
      });
    };
    const [a, b] = [box(inside), box(outside)];
    expect(b[2]?.[1]).toBe(0);
    for (const [axis, end] of [
      [0, 0],
      [0, 1],
      [2, 0],
    ] as const) {
      const apart = Math.abs((b[axis]?.[end] ?? 0) - (a[axis]?.[end] ?? 0));
      expect(apart).toBeGreaterThan(design.pan.sheet.thickness - 1e-3);
    }
  });
});

describe('closed forms', () => {
  it('the outside of the sharp step is the step grown by 3 mm: 206 × (306 × 203 + 400 × 53)', () => {
    const outside = outsideSolid(panSkin(buildPan(stepDesign())), 3);
    expectWithin(meshVolume(outside), 206 * (306 * 203 + 400 * 53), 1e-3, 'volume, mm³');
  });

  it('a plate of 300 × 200 with round corners of 20 and a hole of 50 has its area times 3 mm', async () => {
    const holes = [{ at: [150, 100] as const, diameter: 50, what: 'hole' }];
    const solid = await plateSolid(plate({ holes }));
    const area = 300 * 200 - (4 - Math.PI) * 400 - Math.PI * 625;
    // Chords leave their arcs by 0.02 mm, so a circle of r loses no more than 2πr·0.02·2/3.
    const chords = 2 * Math.PI * (20 + 25) * 0.02 * (2 / 3) * 3;
    expectWithin(meshVolume(solid), area * 3, chords, 'volume, mm³');
  });

  it('collinear points on an outline with holes leave no gap', async () => {
    const outline = [0, 1, 2, 3].flatMap((side) =>
      [0, 0.25, 0.5, 0.75].map((t) => {
        const corners = [
          [0, 0],
          [100, 0],
          [100, 80],
          [0, 80],
        ] as const;
        const [a, b] = [corners[side] ?? [0, 0], corners[(side + 1) % 4] ?? [0, 0]];
        const at = (s: number): [number, number] => [a[0] + (b[0] - a[0]) * s, a[1] + (b[1] - a[1]) * s];
        return { kind: 'line' as const, from: at(t), to: at(t + 0.25) };
      }),
    );
    const openings = [circlePath([50, 40], 10)];
    const file = writeStl(await plateSolid(plate({ outline, openings })), 'plate');
    expect(unpaired(file)).toEqual([]);
  });
});

describe('every plate of every pan', () => {
  it.each(pans)('%s: closed, without a fault, of the part’s own area', async (_, design) => {
    for (const part of partsOf(design)) {
      const file = writeStl(await plateSolid(part), part.name);
      expect(unpaired(file), part.name).toEqual([]);
      if (checker) expect(checkSolid(file).faults, part.name).toEqual(NO_FAULTS);
      // Chords inside outer arcs take area off, chords across holes leave it on; 0.02 mm either way.
      expectWithin(stlVolume(file) / part.thickness, part.area, part.cutLength * 0.02, `${part.name}, mm²`);
    }
  });
});

describe('every piece in its place', () => {
  it.each(pans)('%s: closed, without a fault, of the metal’s volume', async (_, design) => {
    const model = buildPan(design);
    const { thickness } = design.pan.sheet;
    const standing = await partsInPlace(model, panSkin(model));
    const parts = new Map(partsOf(design).map((part) => [part.name, part]));
    for (const { name, mesh } of standing) {
      const file = writeStl(mesh, name);
      expect(unpaired(file), name).toEqual([]);
      if (checker) expect(checkSolid(file).faults, name).toEqual(NO_FAULTS);
      // Flat, so nothing is stretched: the blank's area times its thickness, chords within 0.05 mm.
      const part = parts.get(name);
      if (part !== undefined && part.folds.length === 0 && /^(side|flange)/.test(name)) {
        expectWithin(stlVolume(file) / part.thickness, part.area, part.cutLength * 0.05, `${name}, mm²`);
      }
    }
    expect(standing.some(({ name }) => name.startsWith('flange'))).toBe(true);
    const bottom = Math.min(...standing.flatMap((s) => s.mesh.points.map((p) => p[2])));
    const deepest = Math.max(...design.pan.floor.map((p) => p[1]));
    expectWithin(bottom, -deepest - thickness, 0.2, 'lowest metal, mm');
    expect(Math.max(...standing.flatMap((s) => s.mesh.points.map((p) => p[2])))).toBe(0);
  });

  it('two wings of one name are two parts', async () => {
    const design = sampleDesign((d) => {
      const [wing] = d.pan.wings;
      if (wing !== undefined) d.pan.wings.push({ ...wing, side: 'left' });
      d.baffles = [];
    });
    const model = buildPan(design);
    const names = (await partsInPlace(model, panSkin(model))).map((s) => s.name);
    expect(names.filter((n) => n === 'wing strip')).toHaveLength(2);
    expect(names.filter((n) => n === 'wing rear cap')).toHaveLength(2);
  });
});

describe('random pans', () => {
  const seeds = Array.from({ length: 100 }, (_, i) => 1 + i);
  it.each(seeds)('seed %i closes and keeps the volume', (seed) => {
    const model = randomPan(seed);
    const skin = panSkin(model);
    const file = writeStl(insideSolid(skin), 'inside');
    expect(unpaired(file)).toEqual([]);
    expect(unpaired(writeStl(outsideSolid(skin, model.design.pan.sheet.thickness), 'outside'))).toEqual([]);
    expectWithin(stlVolume(file), belowRail(model), FLOAT32 * belowRail(model), 'volume, mm³');
  });
});

describe('the reader of binary STL', () => {
  const good = (): Uint8Array => writeStl(insideSolid(panSkin(buildPan(stepDesign()))), 'step');
  it('refuses a count that does not fit the size before it takes any room', () => {
    const lying = good();
    new DataView(lying.buffer).setUint32(80, 0xffffffff, true);
    expect(() => readStl(lying)).toThrow(/4294967295 triangles/);
    expect(() => readStl(good().subarray(0, 300))).toThrow(/triangles/);
    expect(() => readStl(new Uint8Array(10))).toThrow(/at least 84/);
  });
  it('refuses a corner that is no number', () => {
    const broken = good();
    new DataView(broken.buffer).setFloat32(84 + 12, Number.NaN, true);
    expect(() => readStl(broken)).toThrow(/Triangle 1/);
  });
  it('never begins with the word that marks the text form', () => {
    expect(new TextDecoder().decode(good().subarray(0, 5))).not.toBe('solid');
  });
});

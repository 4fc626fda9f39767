import type { Design } from 'pan-core/design/index.js';
import { PanError } from 'pan-core/errors/index.js';
import { pathArea, pathDistance } from 'pan-core/geometry/index.js';
import { bendRule, kFromBendTest } from 'pan-core/sheet/index.js';
import { describe, expect, test } from 'vitest';
import { expectWithin } from '../numbers.js';
import { sampleDesign, stepDesign } from '../sample-design.js';
import { BEND, cut, named, trough } from '../sheet-trial.js';

describe('a trough', () => {
  const parts = cut(trough());

  test('belly: L₁ + L₂ + L₃ − 4R + 2 allowances by the width', () => {
    const belly = named(parts, 'belly');
    const length = 120 + 400 + 120 - 4 * 3 + 2 * BEND;
    expectWithin(belly.flat[0], length, 1e-9, 'length');
    expectWithin(belly.flat[1], 200, 1e-12, 'width');
    expectWithin(belly.area, length * 200, 1e-7, 'area');
    expectWithin(belly.cutLength, 2 * (length + 200), 1e-9, 'cut');
    expectWithin(belly.mass, length * 200 * 2 * 7.85e-6, 1e-12, 'mass');
    expect(belly.folds.map((f) => [f.name, f.direction])).toEqual([
      ['rear', 'up'],
      ['front', 'up'],
    ]);
    expectWithin(belly.folds[0]!.from[0], 120 - 3 + BEND / 2, 1e-10, 'rear fold');
    expectWithin(belly.folds[1]!.from[0], length - (120 - 3 + BEND / 2), 1e-9, 'front fold');
  });

  test('sides: the rectangle less two rounded corners, arcs true', () => {
    for (const name of ['side left', 'side right']) {
      const side = named(parts, name);
      expect(side.flat).toEqual([400, 120]);
      expectWithin(side.area, 400 * 120 - 2 * (1 - Math.PI / 4) * 9, 1e-9, 'area');
      expectWithin(side.cutLength, 1040 - 4 * 3 + Math.PI * 3, 1e-9, 'cut');
      expect(side.outline.filter((s) => s.kind === 'arc').map((s) => s.kind === 'arc' && s.radius)).toEqual([
        3, 3,
      ]);
    }
  });

  test('flange: rail less the pan’s outside with 0.2 mm all round, corners rounded about the pan’s own', () => {
    const flange = named(parts, 'flange');
    const d = 2 + 0.2;
    const opening = 400 * 200 + 2 * (400 + 200) * d + Math.PI * d * d;
    expectWithin(
      flange.openings.reduce((s, o) => s - pathArea(o), 0),
      opening,
      1e-8,
      'opening',
    );
    const holes = flange.holes.length * (Math.PI / 4) * 81;
    expectWithin(flange.area, 750 * 250 - opening - holes, 1e-7, 'area');
    expect(new Set(flange.holes.map((h) => h.diameter))).toEqual(new Set([9]));
  });

  test('flange: a bead of sealant marked in the middle of the narrowest land, round the whole opening', () => {
    const flange = named(parts, 'flange');
    const bead = flange.marks.find((m) => m.what.startsWith('sealant bead'))!;
    const opening = flange.openings[0]!;
    const lands = flange.holes.map((h) => pathDistance(opening, h.at) - h.diameter / 2);
    const land = Math.min(25, ...lands);
    expect(bead.path.every((s) => Math.abs(pathDistance(opening, s.from) - land / 2) < 1e-9)).toBe(true);
    for (const h of flange.holes)
      expect(pathDistance(bead.path, h.at)).toBeGreaterThan(h.diameter / 2 + land / 2 - 1e-9);
  });

  test('strongback: flange’s outline and holes, no opening, the bleed hole only marked', () => {
    const [flange, strongback] = [named(parts, 'flange'), named(parts, 'strongback')];
    expect(strongback.outline).toEqual(flange.outline);
    expect(strongback.holes).toEqual(flange.holes);
    expect(strongback.openings).toEqual([]);
    expect(strongback.marks).toHaveLength(1);
  });

  test('without rail holes the flange is a blank that says so', () => {
    const blank = named(
      cut(
        trough((d) => {
          d.engine.railHoles = [];
        }),
      ),
      'flange',
    );
    expect(blank.holes).toEqual([]);
    expect(blank.notes.join(' ')).toContain('transfer holes from the block');
  });
});

describe('a step', () => {
  const step = (welded: number[]): Design =>
    stepDesign((d) => {
      d.pan.joints.welded = welded;
    });
  // 3 mm 5052-H32 at 5 mm: medium, R between T and 3T, K 0.43.
  const bend = (Math.PI / 2) * (5 + 0.43 * 3);

  test('the lip, oil outside, takes off R + T; the others R', () => {
    const belly = named(cut(step([])), 'belly');
    const inside = 200 + 300 + 150 + 400 + 50;
    expectWithin(belly.flat[0], inside - 2 * (3 * 5 + 8) + 4 * bend, 1e-9, 'length');
    expect(belly.folds.map((f) => `${f.name} ${f.direction}`)).toEqual([
      'rear up',
      'step foot up',
      'lip down',
      'front up',
    ]);
    expect(belly.folds.every((f) => f.radius === 5)).toBe(true);
  });

  test('welded corners part the strip; at the lip the upright plate stops a thickness short', () => {
    const lengths = cut(step([0, 1, 2, 3]))
      .filter((p) => p.name.startsWith('belly'))
      .map((p) => p.flat[0]);
    expect(lengths).toEqual([200, 300, 147, 400, 50]);
  });
});

describe('bend allowance in a design', () => {
  test('a test bend gives back the K it was made with', () => {
    const k = 0.41;
    const flat = 100;
    // Legs over the outside: half the flat each, plus R + T less half the allowance.
    const leg = flat / 2 + 5 + 3 - (Math.PI / 4) * (5 + k * 3);
    expectWithin(kFromBendTest(flat, [leg, leg], 5, 3), k, 1e-12, 'K');
    const design = sampleDesign((d) => {
      d.pan.joints.bendTest = { flat, legs: [leg, leg] };
    });
    expectWithin(bendRule(design).allowance(1), 5 + k * 3, 1e-12, 'allowance');
  });

  test('a test bend that no sheet could give is refused with the legs that would do', () => {
    const design = sampleDesign((d) => {
      d.pan.joints.bendTest = { flat: 100, legs: [50, 50] };
    });
    expect(() => cut(design)).toThrow(PanError);
    try {
      cut(design);
    } catch (error) {
      const problem = (error as PanError).problems[0]!;
      expect(problem.code).toBe('input-range');
      expect(problem.path).toEqual(['pan', 'joints', 'bend_test']);
      expect(problem.expected).toContain('103.4 and 108.1');
    }
  });

  test('each way of reckoning is used when asked for', () => {
    const of = (allowance: 'k' | 'din' | 'handbook'): number =>
      bendRule(
        sampleDesign((d) => {
          d.pan.joints.allowance = allowance;
        }),
      ).allowance(Math.PI / 2);
    expectWithin(of('k'), (Math.PI / 2) * (5 + 0.43 * 3), 1e-12, 'k');
    expectWithin(of('handbook'), 0.64 * 3 + 1.57 * 5, 1e-12, 'handbook');
    expectWithin(of('din'), (Math.PI / 2) * (5 + ((0.65 + 0.5 * Math.log10(5 / 3)) * 3) / 2), 1e-12, 'din');
  });
});

import { decidingMeasures } from 'pan-core/check/measure-first.js';
import { type Clearance, clearances } from 'pan-core/clearance/index.js';
import type { Design } from 'pan-core/design/index.js';
import { buildPan, outerSolids, platesOf } from 'pan-core/pan/index.js';
import { expect, test } from 'vitest';
import { expectWithin } from '../numbers.js';
import { type Mutable, stepDesign } from '../sample-design.js';

const rowsOf = (change: (d: Mutable<Design>) => void): readonly Clearance[] => {
  const design = stepDesign((d) => {
    d.chassis.obstacles = [
      {
        name: 'beam',
        shape: { kind: 'box', min: [760, -100, -50], max: [800, 100, -10] },
        clear: 15,
        plusMinus: 2,
      },
    ];
    d.engine.bellHousing = { diameter: 300, rear: -200, front: -40 };
    change(d);
  });
  const model = buildPan(design);
  return clearances(design, outerSolids(design, model.profile), platesOf(model));
};

const ON_THE_ENGINE: readonly string[] = ['crank', 'bolt', 'engine'];

test('what is measured on the engine takes its own plus-or-minus off, what is measured in the car its own', () => {
  const exact = rowsOf(() => {});
  const rough = rowsOf((d) => {
    d.engine.plusMinus = 0.75;
  });
  for (const kind of ON_THE_ENGINE) expect(rough.map((row) => row.kind)).toContain(kind);
  for (const row of rough) {
    const same = exact.find(({ name }) => name === row.name);
    const own = ON_THE_ENGINE.includes(row.kind) ? 0.75 : 0;
    expect(row.distance, row.name).toBe(same?.distance);
    if (row.distance === null || row.worst === null) continue;
    expectWithin(row.plusMinus, (same?.plusMinus ?? 0) + own, 1e-12, row.name);
    expectWithin(row.worst, (same?.worst ?? 0) - own, 1e-12, row.name);
  }
  expect(rough.find(({ name }) => name === 'beam')?.plusMinus).toBe(2);
});

test('it is the first to measure again where it decides', () => {
  // A sweep of 48 + 41 = 89 about a crank 62 up has its foot at −27; over a floor at −33.2 it has 6.2, and wants 6.
  const rows = rowsOf((d) => {
    d.engine.plusMinus = 0.75;
    d.pan.floor = [
      [700, 33.2],
      [300, 33.2],
      [300, 200],
      [0, 200],
    ];
  });
  const [first] = decidingMeasures(rows);
  expect([first?.name, first?.decides]).toEqual(['rods to pan', true]);
  expectWithin(first?.spare_mm, 0.2, 1e-9);
  expect(first?.says).toContain('± 0.8 mm');
});

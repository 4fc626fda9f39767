import { figureOf } from 'pan-core/size/goal.js';
import { expect, it } from 'vitest';
import { setOf, textAt } from '../interop/dxf-cut-set.js';
import { expectWithin } from '../numbers.js';
import { sampleDesign } from '../sample-design.js';

/** Welding by the hour, and everything else by the piece. */
const priced = (sheetPerKg: number | null) =>
  sampleDesign((d) => {
    Object.assign(d.prices, {
      sheetPerKg,
      cutPerMetre: 2,
      perPierce: 0.5,
      perFold: 3,
      boughtIn: 60,
      perHour: 30,
      minutesPerPart: 10,
      minutesPerWeldMetre: 30,
      otherHours: 5,
    });
  });

const priceOf = (sheetPerKg: number | null): number =>
  figureOf({ name: 'cheapest' }, { design: priced(sheetPerKg), freedoms: [], values: [] });

it('makes least the bill of the cut set, but for the offcuts', async () => {
  const { cost } = JSON.parse(textAt(await setOf(priced(8), 'pass'), 'manifest.json'));
  const amount = (id: string): number => cost.lines.find((line: { id: string }) => line.id === id).amount;
  expect(amount('work')).toBeGreaterThan(150);
  // Every amount and the sum are rounded to 1e-6 in the manifest.
  expectWithin(priceOf(null), cost.priced - amount('sheet'), 1e-4, 'all but sheet');
  expectWithin(priceOf(8) - priceOf(null), 8 * cost.mass_kg, 1e-4, 'sheet');
  // A bill has sheet to the straight cuts, and parts are lighter by what falls between them.
  expect(amount('sheet')).toBeGreaterThan(8 * cost.mass_kg);
});

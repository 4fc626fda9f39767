import type { Prices } from 'pan-core/design/index.js';
import { describe, expect, it } from 'vitest';
import { partsOf, setOf, textAt } from '../interop/dxf-cut-set.js';
import { expectWithin } from '../numbers.js';
import { sampleDesign } from '../sample-design.js';

const ALL: Partial<Prices> = {
  currency: 'EUR',
  sheetPerKg: 8,
  cutPerMetre: 2,
  perPierce: 0.5,
  perFold: 3,
  boughtIn: 60,
  perHour: 30,
  minutesPerPart: 10,
  minutesPerWeldMetre: 30,
  otherHours: 5,
  bought: 900,
};

const designWith = (prices: Partial<Prices>) =>
  sampleDesign((d) => {
    Object.assign(d.prices, prices);
  });

const costWith = async (prices: Partial<Prices>) => {
  const files = await setOf(designWith(prices), 'pass');
  return { ...JSON.parse(textAt(files, 'manifest.json')), text: textAt(files, '5-buy/cost.txt') };
};

const amountOf = (cost: { lines: { id: string; amount: number | null }[] }, id: string) =>
  cost.lines.find((line) => line.id === id)?.amount;

describe('what a pan costs', () => {
  it('is the counted parts, cuts, folds and seams at the user’s prices', async () => {
    const { cost, parts, seams, nests } = await costWith(ALL);
    const each = partsOf(designWith(ALL));
    const sum = (of: (part: (typeof each)[number]) => number): number =>
      each.reduce((all, part) => all + part.quantity * of(part), 0);
    const pierces = sum((part) => 1 + part.openings.length + part.holes.length);
    const weld = seams.reduce((all: number, seam: { length_mm: number }) => all + seam.length_mm, 0) / 1000;
    expect(cost.pierces).toBe(pierces);
    expect(cost.parts).toBe(
      parts.reduce((all: number, part: { quantity: number }) => all + part.quantity, 0),
    );
    expectWithin(amountOf(cost, 'cut'), 2 * (sum((part) => part.cutLength) / 1000), 1e-6, 'cut');
    expectWithin(amountOf(cost, 'pierce'), 0.5 * pierces, 1e-9, 'starts');
    expectWithin(amountOf(cost, 'fold'), 3 * sum((part) => part.folds.length), 1e-9, 'folds');
    // Density of 5052 2.68 g/cm³ over the corners that the layout uses.
    const kg = nests.reduce(
      (all: number, nest: { used_mm: [number, number]; thickness_mm: number }) =>
        all + nest.used_mm[0] * nest.used_mm[1] * nest.thickness_mm * 2.68e-6,
      0,
    );
    expectWithin(amountOf(cost, 'sheet'), 8 * kg, 1e-4, 'sheet');
    const hours = (10 * cost.parts + 30 * weld) / 60 + 5;
    expectWithin(cost.hours, hours, 1e-5, 'hours');
    expectWithin(amountOf(cost, 'work'), 30 * hours, 1e-3, 'work');
    const total = cost.lines.reduce((all: number, line: { amount: number }) => all + line.amount, 0);
    expectWithin(cost.total, total, 1e-4, 'total');
    expect(cost.make_or_buy).toMatch(total < 900 ? /saves/ : /more than 900\.00 EUR ready/);
  });

  it('is not known where a price is not given, and says which', async () => {
    const { cost, text } = await costWith({ ...ALL, cutPerMetre: null });
    expect(cost.total).toBeNull();
    expect(amountOf(cost, 'cut')).toBeNull();
    expect(text).toContain('prices.cut_per_metre');
    expect(cost.make_or_buy).toContain('not known');
    expect(cost.priced).toBeGreaterThan(0);
  });

  it('is not known at all without prices, quantities standing', async () => {
    const { cost } = await costWith({});
    expect([cost.total, cost.hours, cost.bought, cost.priced]).toEqual([null, null, null, 0]);
    expect(cost.cut_m).toBeGreaterThan(1);
  });

  it('takes welding by the metre in place of hours, not both', async () => {
    const { cost } = await costWith({ ...ALL, weldPerMetre: 40 });
    expectWithin(amountOf(cost, 'weld'), 40 * cost.weld_m, 1e-4, 'weld');
    expectWithin(cost.hours, (10 * cost.parts) / 60 + 5, 1e-5, 'hours');
  });

  it('is dearer than buying as soon as a share of it is', async () => {
    const { cost } = await costWith({ ...ALL, sheetPerKg: null, bought: 10 });
    expect(cost.make_or_buy).toContain('already, more than 10.00 EUR ready');
  });
});

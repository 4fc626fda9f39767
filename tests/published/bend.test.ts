import {
  airBendForce,
  airBendRadius,
  allowanceByHandbook,
  allowanceByK,
  bendDeduction,
  dinCompensation,
  dinFactor,
  type Hardness,
  handbookConstant,
  outsideSetback,
  shortestAirBendLeg,
  tableK,
} from 'pan-core/sheet/index.js';
import { expect, test } from 'vitest';
import { expectWithin } from '../numbers.js';
import { expectPublished, row, rowsUnder, title } from './rows.js';

const rad = (deg: number): number => (deg * Math.PI) / 180;
const inputs = (id: string): Record<string, number> => row(id).inputs as Record<string, number>;

const textbook = (id: string): [angle: number, radius: number, thickness: number, k: number] => {
  const { angle_deg, radius, thickness, k } = inputs(id);
  return [rad(angle_deg!), radius!, thickness!, k!];
};

test(title('sheet.bend.allowance'), () => {
  expectPublished('sheet.bend.allowance', allowanceByK(...textbook('sheet.bend.allowance')));
});

test(title('sheet.bend.setback'), () => {
  const [angle, radius, thickness] = textbook('sheet.bend.setback');
  expectPublished('sheet.bend.setback', outsideSetback(angle, radius, thickness));
});

test(title('sheet.bend.deduction'), () => {
  const [angle, radius, thickness, k] = textbook('sheet.bend.deduction');
  const allowance = allowanceByK(angle, radius, thickness, k);
  expectPublished('sheet.bend.deduction', bendDeduction(angle, radius, thickness, allowance));
});

test.each(['soft', 'medium', 'hard'] as const)('handbook constant of %s sheet', (hardness) => {
  const id = { soft: 'sheet.handbook.soft', medium: 'sheet.handbook.medium', hard: 'sheet.handbook.hard' }[
    hardness
  ];
  // A right angle of thickness 1 and no radius uses the constant itself.
  expectPublished(id, allowanceByHandbook(rad(90), 0, 1, handbookConstant(hardness)));
});

test(title('sheet.handbook.radius-factor'), () => {
  expectPublished('sheet.handbook.radius-factor', allowanceByHandbook(rad(90), 1, 0, 0.64));
});

/** The printed lengths follow from 0.64, the constant of the soft metals the example is about. */
const handbookExample = (angle: number, radius: number): number =>
  allowanceByHandbook(rad(angle), radius, 0.125, handbookConstant('medium'));

test(title('sheet.handbook.example.180'), () => {
  const { angle_deg, radius_in } = inputs('sheet.handbook.example.180');
  expectPublished('sheet.handbook.example.180', handbookExample(angle_deg!, radius_in!));
});

test(title('sheet.handbook.example.60'), () => {
  const { angle_deg, radius_in } = inputs('sheet.handbook.example.60');
  expectPublished('sheet.handbook.example.60', handbookExample(angle_deg!, radius_in!));
});

test(title('sheet.handbook.example.total'), () => {
  expectPublished(
    'sheet.handbook.example.total',
    handbookExample(180, 0.375) + handbookExample(60, 0.625) + 3.5,
  );
});

test(title('sheet.din.k'), () => {
  const { r_mm, s_mm } = inputs('sheet.din.k');
  expectPublished('sheet.din.k', dinFactor(r_mm!, s_mm!));
});

test('DIN 6935 k is 1 past r/s 5 and never negative (form from memory)', () => {
  expect(dinFactor(5.01, 1)).toBe(1);
  expectWithin(dinFactor(5, 1), 0.65 + 0.5 * Math.log10(5), 1e-15, 'k at r/s 5');
  expect(dinFactor(0.01, 1)).toBe(0);
});

const din = (id: string): { v: number; l: number } => {
  const { opening_angle_deg, a_mm, b_mm, r_mm, s_mm, k } = inputs(id);
  const v = dinCompensation(rad(180 - opening_angle_deg!), r_mm!, s_mm!, k);
  return { v, l: a_mm! + b_mm! - v };
};

test.each(['sheet.din.chart.deduction', 'sheet.din.formula.deduction'])('%s', (id) => {
  expectPublished(id, din(id).v);
});

test.each(['sheet.din.chart.length', 'sheet.din.formula.length'])('%s', (id) => {
  expectPublished(id, din(id).l);
});

test('DIN 6935 example with the formula’s own k', () => {
  const { r_mm, s_mm } = inputs('sheet.din.formula.deduction');
  expectPublished('sheet.din.formula.deduction', dinCompensation(rad(120), r_mm!, s_mm!));
});

test('every row of the air-bend K table', () => {
  const ratios: Readonly<Record<string, number>> = { 'to-T': 1, 'T-to-3T': 3, 'beyond-3T': 3.01 };
  const rows = rowsUnder('sheet.k-factor');
  expect(rows).toHaveLength(7);
  for (const one of rows) {
    const { radius, hardness } = one.inputs as { radius: string; hardness?: Hardness };
    const ratio = ratios[radius]!;
    for (const kind of hardness === undefined ? (['soft', 'medium', 'hard'] as const) : [hardness]) {
      expectPublished(one.id, tableK(ratio * 3, 3, kind));
    }
  }
});

test(title('sheet.air-bend-force'), () => {
  const { strength_MPa, s_mm, w_mm, l_mm } = inputs('sheet.air-bend-force');
  expectPublished('sheet.air-bend-force', airBendForce(strength_MPa!, s_mm!, w_mm!, l_mm!) / 1000);
});

test(title('sheet.air-bend-radius'), () => {
  expectPublished('sheet.air-bend-radius', airBendRadius(1));
});

test('every row of the shortest flanges over a die', () => {
  const rows = rowsUnder('sheet.shortest-flange');
  expect(rows).toHaveLength(5);
  for (const one of rows) {
    const { die_opening_mm } = one.inputs as { die_opening_mm: number };
    expectPublished(one.id, shortestAirBendLeg(die_opening_mm));
  }
});

test('between the rows of the shortest flanges lines are straight, and beyond them in proportion', () => {
  expectWithin(shortestAirBendLeg(20.5), (11.5 + 18) / 2, 1e-12, 'between 16 and 25');
  expectWithin(shortestAirBendLeg(4), 2.8, 1e-12, 'below 8');
  expectWithin(shortestAirBendLeg(100), 75, 1e-12, 'past 50');
});

import type { Prices } from '../../design/index.js';
import type { Cost, CostLine, SheetNeed } from '../../weld/index.js';
import { type CutPlan, headLines } from '../cut-plan.js';
import { oneLine } from '../one-line.js';
import { massWords, trimmed } from '../part-words.js';
import { lines } from './bench-words.js';
import { makeOrBuy, moneyWords } from './cost.js';

/** Names of the prices as the design file has them. */
const KEYS: Readonly<Record<keyof Prices, string>> = {
  currency: 'currency',
  sheetPerKg: 'sheet_per_kg',
  cutPerMetre: 'cut_per_metre',
  perPierce: 'per_pierce',
  perFold: 'per_fold',
  weldPerMetre: 'weld_per_metre',
  boughtIn: 'bought_in',
  perHour: 'per_hour',
  minutesPerPart: 'minutes_per_part',
  minutesPerFold: 'minutes_per_fold',
  minutesPerWeldMetre: 'minutes_per_weld_metre',
  otherHours: 'other_hours',
  bought: 'bought',
};

/** What the pan takes and, by the user's prices, what it costs. */
export const costText = (plan: CutPlan, cost: Cost): string => {
  const { quantities: q } = cost;
  const currency = cost.currency === null ? null : oneLine(cost.currency, 10);
  return lines([
    ...headLines(plan, 'cost'),
    makeOrBuy({ ...cost, currency }),
    '',
    'What it takes',
    `  ${q.parts} parts, ${massWords(q.mass)}`,
    ...q.sheet.map((need) => `  ${sheetWords(need)}`),
    ...(q.tooLarge.length === 0
      ? []
      : [`  On no sheet: ${q.tooLarge.map((n) => oneLine(n, 60)).join(', ')}`]),
    `  ${(q.cutLength / 1000).toFixed(1)} m of cut in ${q.pierces} starts`,
    `  ${q.folds} folds`,
    `  ${(q.weldLength / 1000).toFixed(2)} m of seam`,
    `  ${cost.hours === null ? 'hours not known' : `${cost.hours.toFixed(1)} hours`}`,
    '',
    'What it costs, by the prices in the design',
    ...cost.lines.map((line) => `  ${line.what}: ${lineWords(line, currency)}`),
    cost.total === null
      ? `  in all: not known; ${moneyWords(cost.priced, currency)} of it is priced`
      : `  in all: ${moneyWords(cost.total, currency)}`,
    '',
    'Sheet is priced by what is used of it, rim included; a seller of whole sheets asks for the rest too.',
    'Nothing is taken for granted: what has no price or time is left open. See `prices` in the list of design keys.',
  ]);
};

const lineWords = ({ amount, needs }: CostLine, currency: string | null): string =>
  amount === null
    ? `not known${needs.length === 0 ? '' : ` (${needs.map((key) => `prices.${KEYS[key]}`).join(', ')})`}`
    : moneyWords(amount, currency);

const sheetWords = (need: SheetNeed): string => {
  const { material, thickness, sheets, size, usedArea, boughtArea, partsArea, usedMass, boughtMass } = need;
  const m2 = (area: number): string => `${(area * 1e-6).toFixed(2)} m²`;
  const mass = (kg: number | null): string => (kg === null ? 'mass not known' : massWords(kg));
  return `${material} ${trimmed(thickness, 2)} mm: ${sheets} sheet${sheets === 1 ? '' : 's'} of ${size.map((s) => s.toFixed(0)).join(' x ')} mm, ${m2(boughtArea)}, ${mass(boughtMass)}; used ${m2(usedArea)}, ${mass(usedMass)}; in parts ${m2(partsArea)}, ${massWords(need.partsMass)}`;
};

/** The same for programs; null is not known. */
export const costRows = (cost: Cost): object => ({
  currency: cost.currency,
  parts: cost.quantities.parts,
  mass_kg: fine(cost.quantities.mass),
  sheet: cost.quantities.sheet.map((need) => ({
    material: need.material,
    thickness_mm: fine(need.thickness),
    sheets: need.sheets,
    bought_m2: fine(need.boughtArea * 1e-6),
    used_m2: fine(need.usedArea * 1e-6),
    parts_m2: fine(need.partsArea * 1e-6),
    bought_kg: need.boughtMass === null ? null : fine(need.boughtMass),
    used_kg: need.usedMass === null ? null : fine(need.usedMass),
    parts_kg: fine(need.partsMass),
  })),
  cut_m: fine(cost.quantities.cutLength / 1000),
  pierces: cost.quantities.pierces,
  folds: cost.quantities.folds,
  weld_m: fine(cost.quantities.weldLength / 1000),
  hours: cost.hours === null ? null : fine(cost.hours),
  lines: cost.lines.map(({ id, amount, needs }) => ({
    id,
    amount: amount === null ? null : fine(amount),
    needs: needs.map((key) => KEYS[key]),
  })),
  priced: fine(cost.priced),
  total: cost.total === null ? null : fine(cost.total),
  bought: cost.bought,
  make_or_buy: makeOrBuy(cost),
});

const fine = (value: number): number => Number(value.toFixed(6));

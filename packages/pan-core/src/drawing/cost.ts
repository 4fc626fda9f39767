import { findMaterial, type Prices } from '../design/index.js';
import { freeze } from '../numeric/index.js';
import type { CutPlan } from './cut-plan.js';
import type { NestGroup } from './nest-group.js';

/** Sheet of one material and thickness. */
export interface SheetNeed {
  readonly material: string;
  readonly thickness: number;
  /** Sheets to buy, and one's length and width, mm. */
  readonly sheets: number;
  readonly size: readonly [number, number];
  /** mm²; used is the corner that straight cuts take off each sheet. */
  readonly boughtArea: number;
  readonly usedArea: number;
  readonly partsArea: number;
  /** kg; null where the density is not known. */
  readonly boughtMass: number | null;
  readonly usedMass: number | null;
  readonly partsMass: number;
}

/** What the pan takes, counted. */
export interface Quantities {
  readonly sheet: readonly SheetNeed[];
  readonly parts: number;
  readonly mass: number;
  /** mm */
  readonly cutLength: number;
  readonly pierces: number;
  readonly folds: number;
  /** mm */
  readonly weldLength: number;
  /** Parts that no sheet holds: they are in no sum of sheet. */
  readonly tooLarge: readonly string[];
}

/** A line of the bill: an amount is null while a price or a time that it needs is not given. */
export interface CostLine {
  readonly id: 'sheet' | 'cut' | 'pierce' | 'fold' | 'weld' | 'bought_in' | 'work';
  readonly what: string;
  readonly amount: number | null;
  /** Key of the price that is not given. */
  readonly needs: readonly (keyof Prices)[];
}

/** What the pan costs, line by line, as far as prices are given. */
export interface Cost {
  readonly currency: string | null;
  readonly quantities: Quantities;
  /** Work in hours; null while a time is not given. */
  readonly hours: number | null;
  readonly lines: readonly CostLine[];
  /** Sum of what is priced, and of everything once all of it is. */
  readonly priced: number;
  readonly total: number | null;
  /** A pan bought ready. */
  readonly bought: number | null;
}

export const quantitiesOf = ({ parts, seams }: CutPlan, nests: readonly NestGroup[]): Quantities => {
  const sum = (of: (part: CutPlan['parts'][number]['part']) => number): number =>
    parts.reduce((all, { part }) => all + part.quantity * of(part), 0);
  return {
    sheet: nests.map(sheetNeed),
    parts: sum(() => 1),
    mass: sum((part) => part.mass),
    cutLength: sum((part) => part.cutLength),
    pierces: sum((part) => 1 + part.openings.length + part.holes.length),
    folds: sum((part) => part.folds.length),
    weldLength: seams.reduce((all, seam) => all + seam.length, 0),
    tooLarge: nests.flatMap(({ tooLarge }) => tooLarge.map(({ part }) => part.name)),
  };
};

const sheetNeed = ({ material, thickness, sheet, sheets, parts }: NestGroup): SheetNeed => {
  const density = findMaterial(material)?.density ?? null;
  const boughtArea = sheets.length * sheet.length * sheet.width;
  const usedArea = sheets.reduce((sum, { used }) => sum + used[0] * used[1], 0);
  const weigh = (area: number): number | null => (density === null ? null : area * thickness * density);
  return {
    material,
    thickness,
    sheets: sheets.length,
    size: [sheet.length, sheet.width],
    boughtArea,
    usedArea,
    partsArea: parts.reduce((sum, { part }) => sum + part.quantity * part.area, 0),
    boughtMass: weigh(boughtArea),
    usedMass: weigh(usedArea),
    partsMass: parts.reduce((sum, { part }) => sum + part.quantity * part.mass, 0),
  };
};

/**
 * The bill by the user's own prices. Sheet is priced by the weight of what is used of it. Folding and welding
 * are either bought by the piece and the metre or done in hours, never both.
 */
export const costOf = (plan: CutPlan, nests: readonly NestGroup[]): Cost => {
  const { prices } = plan.design;
  const quantities = quantitiesOf(plan, nests);
  const used = quantities.sheet.reduce<number | null>(
    (sum, need) => (sum === null || need.usedMass === null ? null : sum + need.usedMass),
    0,
  );
  const { hours, needs } = workHours(prices, quantities);
  const lines: CostLine[] = [
    line('sheet', 'sheet used', quantities.tooLarge.length > 0 ? null : used, prices, 'sheetPerKg'),
    line('cut', 'cutting, by the metre', quantities.cutLength / 1000, prices, 'cutPerMetre'),
    // A shop that asks for cutting by the metre alone asks nothing for a start.
    ...(prices.perPierce === null && prices.cutPerMetre !== null
      ? []
      : [line('pierce', 'cutting, by the start', quantities.pierces, prices, 'perPierce')]),
    ...(prices.perFold === null ? [] : [line('fold', 'folding', quantities.folds, prices, 'perFold')]),
    ...(prices.weldPerMetre === null
      ? []
      : [line('weld', 'welding', quantities.weldLength / 1000, prices, 'weldPerMetre')]),
    line('bought_in', 'bought parts', 1, prices, 'boughtIn'),
    {
      id: 'work',
      what: 'work',
      amount: hours === null || prices.perHour === null ? null : hours * prices.perHour,
      needs: [...needs, ...(prices.perHour === null ? (['perHour'] as const) : [])],
    },
  ];
  const priced = lines.reduce((sum, { amount }) => sum + (amount ?? 0), 0);
  const total = lines.every(({ amount }) => amount !== null) ? priced : null;
  return freeze({
    currency: prices.currency,
    quantities,
    hours,
    lines,
    priced,
    total,
    bought: prices.bought,
  });
};

const line = (
  id: CostLine['id'],
  what: string,
  count: number | null,
  prices: Prices,
  key: Exclude<keyof Prices, 'currency'>,
): CostLine => {
  const rate = prices[key];
  return {
    id,
    what,
    amount: rate === null || count === null ? null : rate * count,
    needs: rate === null ? [key] : [],
  };
};

const workHours = (
  prices: Prices,
  { parts, folds, weldLength }: Quantities,
): { readonly hours: number | null; readonly needs: readonly (keyof Prices)[] } => {
  const times: readonly (readonly [keyof Prices, number | null, number])[] = [
    ['minutesPerPart', prices.minutesPerPart, parts],
    ...(prices.perFold === null ? [['minutesPerFold', prices.minutesPerFold, folds] as const] : []),
    ...(prices.weldPerMetre === null
      ? [['minutesPerWeldMetre', prices.minutesPerWeldMetre, weldLength / 1000] as const]
      : []),
    ['otherHours', prices.otherHours === null ? null : 60 * prices.otherHours, 1],
  ];
  const needs = times.filter(([, minutes]) => minutes === null).map(([key]) => key);
  const minutes = times.reduce((sum, [, each, count]) => sum + (each ?? 0) * count, 0);
  return { hours: needs.length > 0 ? null : minutes / 60, needs };
};

/** In one sentence: is it cheaper to make than to buy, as far as the prices say. */
export const makeOrBuy = ({ priced, total, bought, currency }: Cost): string => {
  const money = (value: number): string => moneyWords(value, currency);
  if (bought === null) return 'Make or buy: not known, since prices.bought is not given.';
  if (total !== null) {
    const saved = bought - total;
    return saved >= 0
      ? `Making it costs ${money(total)} and saves ${money(saved)} against ${money(bought)} ready.`
      : `Making it costs ${money(total)}, ${money(-saved)} more than ${money(bought)} ready.`;
  }
  return priced > bought
    ? `What is priced comes to ${money(priced)} already, more than ${money(bought)} ready.`
    : `Make or buy: not known; what is priced comes to ${money(priced)} against ${money(bought)} ready.`;
};

export const moneyWords = (value: number, currency: string | null): string =>
  `${value.toFixed(2)}${currency === null ? '' : ` ${currency}`}`;

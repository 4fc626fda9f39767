import type { Prices } from '../design/index.js';
import { freeze } from '../numeric/index.js';
import type { Part } from '../sheet/index.js';
import type { Seam } from './seam.js';

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

/** Counts everything but sheet, which is told as it is bought. */
export const countedWork = (
  parts: readonly Part[],
  seams: readonly Pick<Seam, 'length'>[],
): Omit<Quantities, 'sheet' | 'tooLarge'> => {
  const sum = (of: (part: Part) => number): number =>
    parts.reduce((all, part) => all + part.quantity * of(part), 0);
  return {
    parts: sum(() => 1),
    mass: sum((part) => part.mass),
    cutLength: sum((part) => part.cutLength),
    pierces: sum((part) => 1 + part.openings.length + part.holes.length),
    folds: sum((part) => part.folds.length),
    weldLength: seams.reduce((all, seam) => all + seam.length, 0),
  };
};

/** The work of a bill and the weight of its sheet, kg: null where a density is not known or no sheet holds a part. */
export interface Billed {
  readonly work: Omit<Quantities, 'sheet' | 'tooLarge'>;
  readonly sheetMass: number | null;
}

/**
 * The lines of a bill by the user's own prices. Folding and welding are either bought by the piece and the metre
 * or done in hours, never both.
 */
export const billLines = (
  prices: Prices,
  { work, sheetMass }: Billed,
): Pick<Cost, 'hours' | 'lines' | 'priced'> => {
  const { hours, needs } = workHours(prices, work);
  const lines: CostLine[] = [
    line('sheet', 'sheet used', sheetMass, prices, 'sheetPerKg'),
    line('cut', 'cutting, by the metre', work.cutLength / 1000, prices, 'cutPerMetre'),
    // A shop that asks for cutting by the metre alone asks nothing for a start.
    ...(prices.perPierce === null && prices.cutPerMetre !== null
      ? []
      : [line('pierce', 'cutting, by the start', work.pierces, prices, 'perPierce')]),
    ...(prices.perFold === null ? [] : [line('fold', 'folding', work.folds, prices, 'perFold')]),
    ...(prices.weldPerMetre === null
      ? []
      : [line('weld', 'welding', work.weldLength / 1000, prices, 'weldPerMetre')]),
    line('bought_in', 'bought parts', 1, prices, 'boughtIn'),
    {
      id: 'work',
      what: 'work',
      amount: hours === null || prices.perHour === null ? null : hours * prices.perHour,
      needs: [...needs, ...(prices.perHour === null ? (['perHour'] as const) : [])],
    },
  ];
  const priced = lines.reduce((sum, { amount }) => sum + (amount ?? 0), 0);
  return freeze({ hours, lines, priced });
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
  { parts, folds, weldLength }: Billed['work'],
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

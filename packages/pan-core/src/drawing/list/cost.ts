import { findMaterial } from '../../design/index.js';
import { freeze } from '../../numeric/index.js';
import { billLines, type Cost, countedWork, type Quantities, type SheetNeed } from '../../weld/index.js';
import type { CutPlan } from '../cut-plan.js';
import type { NestGroup } from '../nest/nest-group.js';

export const quantitiesOf = ({ parts, seams }: CutPlan, nests: readonly NestGroup[]): Quantities => ({
  sheet: nests.map(sheetNeed),
  ...countedWork(
    parts.map(({ part }) => part),
    seams,
  ),
  tooLarge: nests.flatMap(({ tooLarge }) => tooLarge.map(({ part }) => part.name)),
});

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

/** The bill by the user's own prices. Sheet is priced by the weight of what is used of it. */
export const costOf = (plan: CutPlan, nests: readonly NestGroup[]): Cost => {
  const { prices } = plan.design;
  const quantities = quantitiesOf(plan, nests);
  const used = quantities.sheet.reduce<number | null>(
    (sum, need) => (sum === null || need.usedMass === null ? null : sum + need.usedMass),
    0,
  );
  const { hours, lines, priced } = billLines(prices, {
    work: quantities,
    sheetMass: quantities.tooLarge.length > 0 ? null : used,
  });
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

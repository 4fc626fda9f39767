import { type DefaultName, defaultNamed } from '../default.js';
import type { Point2, Point3 } from '../design.js';
import type { DesignKeys } from '../keys/design-keys.js';
import type { Prices, Shop } from '../shop.js';
import type { Notes } from './notes.js';

/** Common stock size in metric countries, as the default's words say. */
const STOCK: Point2 = [2500, 1250];
/** A common size of bed, as the default's words say. */
const BED: Point3 = [220, 220, 250];

/** A usual size, noted in the default's own words. */
const assumed = <T>(usual: T, path: readonly string[], name: DefaultName, notes: Notes): T => {
  const { value, why } = defaultNamed(name);
  notes.assume(path, value, why);
  return usual;
};

export const resolveShop = (keys: DesignKeys['shop'], notes: Notes): Shop => {
  const path = ['shop'];
  return {
    sheet: keys?.sheet ?? assumed(STOCK, [...path, 'sheet'], 'stock sheet', notes),
    edge: notes.take(keys?.edge, [...path, 'edge'], 'length', 'sheet edge'),
    gap: keys?.gap ?? null,
    brake: {
      longest: keys?.brake?.longest ?? null,
      die: keys?.brake?.die ?? null,
      punch: keys?.brake?.punch ?? null,
    },
    printer: resolvePrinter(keys?.printer, notes),
  };
};

const resolvePrinter = (keys: NonNullable<DesignKeys['shop']>['printer'], notes: Notes): Shop['printer'] => {
  const path = ['shop', 'printer'];
  return {
    bed: keys?.bed ?? assumed(BED, [...path, 'bed'], 'printer bed', notes),
    wall: notes.take(keys?.wall, [...path, 'wall'], 'length', 'mock-up wall'),
  };
};

export const resolvePrices = (keys: DesignKeys['prices']): Prices => ({
  currency: keys?.currency ?? null,
  sheetPerKg: keys?.sheet_per_kg ?? null,
  cutPerMetre: keys?.cut_per_metre ?? null,
  perPierce: keys?.per_pierce ?? null,
  perFold: keys?.per_fold ?? null,
  weldPerMetre: keys?.weld_per_metre ?? null,
  boughtIn: keys?.bought_in ?? null,
  perHour: keys?.per_hour ?? null,
  minutesPerPart: keys?.minutes_per_part ?? null,
  minutesPerFold: keys?.minutes_per_fold ?? null,
  minutesPerWeldMetre: keys?.minutes_per_weld_metre ?? null,
  otherHours: keys?.other_hours ?? null,
  bought: keys?.bought ?? null,
});

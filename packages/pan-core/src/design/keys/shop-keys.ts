import { assumedText } from '../default.js';
import { optional, plainNumber, section, text, tuple } from '../field/index.js';
import type { Kit } from './kit.js';

/** What sheet is bought and cut on. */
export const shopField = (k: Kit) =>
  section('the shop that cuts', {
    sheet: optional(
      tuple('stock sheet as bought: length, the way it was rolled, and width', [
        k.size('length', '12000 mm'),
        k.size('width', '12000 mm'),
      ]),
      assumedText('stock sheet'),
    ),
    edge: optional(
      k.length('bare rim all round a sheet', { from: '0 mm', to: '200 mm' }),
      assumedText('sheet edge'),
    ),
    gap: optional(
      k.length('metal left between two cuts; the sheet’s thickness and 5 mm at least when left out', {
        above: '0 mm',
        to: '200 mm',
      }),
    ),
    brake: optional(
      section('the brake that folds', {
        longest: optional(k.size('longest fold it takes')),
        die: optional(k.size('opening of the V in its die', '200 mm')),
        punch: optional(k.size('thickness of its punch beside the fold', '200 mm')),
      }),
    ),
    printer: optional(
      section('the printer that makes the mock-up', {
        bed: optional(
          tuple('what it can print: length, width and height', [
            k.size('length', '5000 mm'),
            k.size('width', '5000 mm'),
            k.size('height', '5000 mm'),
          ]),
          assumedText('printer bed'),
        ),
        wall: optional(
          k.length('wall of the mock-up; pins need 3.5 mm', { from: '0.8 mm', to: '20 mm' }),
          assumedText('mock-up wall'),
        ),
      }),
    ),
  });

/** Rates and times that only the user knows; what is left out stays unknown. */
export const pricesField = section('prices, in one currency', {
  currency: optional(text('currency', 10, 'EUR')),
  sheet_per_kg: optional(plainNumber('sheet, per kg')),
  cut_per_metre: optional(plainNumber('laser cutting, per metre')),
  per_pierce: optional(plainNumber('laser cutting, per start of a cut')),
  per_fold: optional(plainNumber('folding, per fold')),
  weld_per_metre: optional(plainNumber('welding by somebody else, per metre of seam')),
  bought_in: optional(plainNumber('bolts, tube, gasket, filler and other bought parts, in all')),
  per_hour: optional(plainNumber('work, per hour')),
  minutes_per_part: optional(plainNumber('minutes to deburr, mark and fit up a part')),
  minutes_per_fold: optional(plainNumber('minutes to set up and make a fold')),
  minutes_per_weld_metre: optional(plainNumber('minutes to weld a metre of seam')),
  other_hours: optional(plainNumber('hours for everything else: mock-up, tube, leak test, fitting')),
  bought: optional(plainNumber('a pan bought ready')),
});

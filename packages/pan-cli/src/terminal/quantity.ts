import type { LengthUnits } from '../commands/command.js';

const MM_PER_INCH = 25.4;
/** US liquid quart: 231 in³ by definition (NIST Handbook 44, Appendix C). */
const L_PER_US_QUART = 0.946352946;

interface Shown {
  readonly factor: number;
  readonly unit: string;
  readonly decimals: number;
}

const METRIC: Readonly<Record<string, Shown>> = {
  mm: { factor: 1, unit: 'mm', decimals: 0 },
  L: { factor: 1, unit: 'L', decimals: 2 },
  g: { factor: 1, unit: 'g', decimals: 2 },
  deg: { factor: 1, unit: 'deg', decimals: 1 },
  s: { factor: 1, unit: 's', decimals: 1 },
  'm/s': { factor: 1, unit: 'm/s', decimals: 1 },
  bar: { factor: 1, unit: 'bar', decimals: 2 },
  mm2: { factor: 1, unit: 'mm²', decimals: 0 },
  '1': { factor: 1, unit: '', decimals: 0 },
  kg: { factor: 1, unit: 'kg', decimals: 2 },
};

const INCH: Readonly<Record<string, Shown>> = {
  mm: { factor: 1 / MM_PER_INCH, unit: 'in', decimals: 2 },
  mm2: { factor: 1 / MM_PER_INCH ** 2, unit: 'in²', decimals: 2 },
  L: { factor: 1 / L_PER_US_QUART, unit: 'US qt', decimals: 2 },
};

const MOST_DECIMALS = 4;

const shownAs = (unit: string, units: LengthUnits): Shown =>
  (units === 'in' ? INCH[unit] : undefined) ?? METRIC[unit] ?? { factor: 1, unit, decimals: 0 };

const fixed = (value: number, decimals: number): string => {
  const text = value.toFixed(decimals);
  // A rounded small negative would print as "-0", which reads as a side it is not on.
  return Number(text) === 0 ? text.replace('-', '') : text.replace('-', '−');
};

/** The fewest decimals, from the unit's own on, at which a non-zero value does not print as zero. */
const decimalsFor = (value: number, shown: Shown): number => {
  let decimals = shown.decimals;
  const size = Math.abs(value * shown.factor);
  while (size >= 1e-3 && decimals < MOST_DECIMALS && Number(size.toFixed(decimals)) === 0) decimals++;
  return decimals;
};

const withUnit = (number: string, unit: string): string => (unit === '' ? number : `${number} ${unit}`);

/** A value for people, with its unit: whole mm, litres to the hundredth, or inches and US quarts. */
export const quantity = (value: number, unit: string, units: LengthUnits): string => {
  const shown = shownAs(unit, units);
  return withUnit(fixed(value * shown.factor, decimalsFor(value, shown)), shown.unit);
};

/**
 * A value and its limit with as many decimals as it takes to tell them apart, so that a fail by half a
 * millimetre never reads "6 mm of 6 mm".
 */
export const pair = (value: number, limit: number, unit: string, units: LengthUnits): [string, string] => {
  const shown = shownAs(unit, units);
  const [a, b] = [value * shown.factor, limit * shown.factor];
  let decimals = decimalsFor(value, shown);
  while (a !== b && decimals < MOST_DECIMALS && a.toFixed(decimals) === b.toFixed(decimals)) decimals++;
  const most = Number.isInteger(limit) && shown.factor === 1 ? Math.min(shown.decimals, decimals) : decimals;
  return [withUnit(fixed(a, decimals), shown.unit), withUnit(fixed(b, most), shown.unit)];
};

const NUMBER = String.raw`[-−]?\d+(?:\.\d+)?`;
const PLACE = String.raw`(?<!\d )\b[xyz] (?:= )?${NUMBER}`;
const LINK = '(?: ?± ?| to | by | and |, | × )';
// One or more numbers that share a unit, or places along the axes, which are mm whether or not it is said.
const LENGTHS = new RegExp(
  String.raw`(?<![\w.])(?:(?:${PLACE}|${NUMBER})(?:${LINK}(?:${PLACE}|${NUMBER}))* (mm|L)(?![\w²³/·])|${PLACE}(?:, ${PLACE})*(?!\w|\.\d))`,
  'g',
);
const EACH = new RegExp(NUMBER, 'g');

/**
 * A sentence of the report with its millimetres and litres put into inches and US quarts, if asked, and a
 * unit behind every place.
 */
export const sentence = (text: string, units: LengthUnits): string =>
  text.replace(LENGTHS, (run: string, written: string | undefined) => {
    if (units === 'mm') return written === undefined ? `${run} mm` : run;
    const shown = shownAs(written ?? 'mm', units);
    const numbers = written === undefined ? run : run.slice(0, -written.length - 1);
    const converted = numbers.replace(EACH, (number) => {
      const value = Number(number.replace('−', '-'));
      return fixed(value * shown.factor, decimalsFor(value, shown));
    });
    return withUnit(converted, shown.unit);
  });

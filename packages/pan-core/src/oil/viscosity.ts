import { power } from '../numeric/index.js';
import table from './viscosity-index.json' with { type: 'json' };

/** Kinematic viscosity against temperature as ASTM D341 draws it: log log(ν + 0.7) = A − B·log T. */
export interface ViscosityLine {
  readonly a: number;
  readonly b: number;
  /** Added to °C for T. */
  readonly kelvinOffset: number;
}

/** A viscosity in mm²/s at a temperature in °C. */
export interface ViscosityPoint {
  readonly celsius: number;
  readonly viscosity: number;
}

const KELVIN = 273.15;

const doubleLog = (viscosity: number): number => Math.log10(Math.log10(viscosity + 0.7));

/**
 * The line through two viscosities. ASTM D341, for 2 mm²/s and more; base-ten logarithms, T in kelvin. Below
 * an oil's cloud point real oils are thicker than the line says.
 */
export const viscosityLine = (
  one: ViscosityPoint,
  other: ViscosityPoint,
  kelvinOffset = KELVIN,
): ViscosityLine => {
  const [x1, x2] = [Math.log10(one.celsius + kelvinOffset), Math.log10(other.celsius + kelvinOffset)];
  const [y1, y2] = [doubleLog(one.viscosity), doubleLog(other.viscosity)];
  const b = (y1 - y2) / (x2 - x1);
  return Object.freeze({ a: y1 + b * x1, b, kelvinOffset });
};

/** Kinematic viscosity in mm²/s at a temperature in °C. */
export const viscosityAt = ({ a, b, kelvinOffset }: ViscosityLine, celsius: number): number =>
  power(10, power(10, a - b * Math.log10(celsius + kelvinOffset))) - 0.7;

/** Least viscosity at 100 °C for which D2270 defines an index, mm²/s. */
export const LEAST_FOR_INDEX = 2;

/** Viscosities at 40 °C of the reference oils of index 0 (L) and 100 (H) with the same viscosity at 100 °C. */
const referenceOils = (at100: number): { readonly l: number; readonly h: number } => {
  const row = table.rows.findLast((r) => r.from <= at100) ?? table.rows[0];
  const value = ([square = 0, linear = 0, constant = 0]: readonly number[] = []): number =>
    square * at100 ** 2 + linear * at100 + constant;
  return { l: value(row?.l), h: value(row?.h) };
};

/**
 * Viscosity index by ASTM D2270 from mm²/s at 40 and 100 °C: procedure A up to 100, (L − U)/(L − H)·100, and
 * procedure B above, ((H/U)^(1/log Y) as a power of ten − 1)/0.00715 + 100. NaN below 2 mm²/s at 100 °C.
 */
export const viscosityIndex = (at40: number, at100: number): number => {
  if (!(at100 >= LEAST_FOR_INDEX)) return Number.NaN;
  const { l, h } = referenceOils(at100);
  if (at40 >= h) return ((l - at40) / (l - h)) * 100;
  const n = Math.log10(h / at40) / Math.log10(at100);
  return (power(10, n) - 1) / 0.00715 + 100;
};

/** Viscosity at 40 °C of an oil of this index and viscosity at 100 °C: D2270 solved for U, mm²/s. */
export const viscosityAt40 = (at100: number, index: number): number => {
  const { l, h } = referenceOils(at100);
  if (index <= 100) return l - (index * (l - h)) / 100;
  return h / power(at100, Math.log10((index - 100) * 0.00715 + 1));
};

const MOST_AT_100 = 500;

/** Viscosity at 100 °C of an oil of this index and viscosity at 40 °C, by halving, mm²/s; null where none is. */
export const viscosityAt100 = (at40: number, index: number): number | null => {
  let [lo, hi] = [LEAST_FOR_INDEX, MOST_AT_100];
  if (viscosityAt40(lo, index) > at40 || viscosityAt40(hi, index) < at40) return null;
  for (let i = 0; i < 60; i++) {
    const middle = (lo + hi) / 2;
    if (viscosityAt40(middle, index) < at40) lo = middle;
    else hi = middle;
  }
  return (lo + hi) / 2;
};

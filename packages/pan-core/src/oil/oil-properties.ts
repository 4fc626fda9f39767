import type { Assumption, OilPlan, OilSheet } from '../design/index.js';
import { freeze } from '../numeric/index.js';
import { densityAt60F, oilDensity } from './density.js';
import { type OilGrade, readOilGrade } from './oil-grade.js';
import {
  type ViscosityLine,
  viscosityAt,
  viscosityAt40,
  viscosityAt100,
  viscosityLine,
} from './viscosity.js';

/** An oil as far as flow goes, with what had to be taken for granted. */
export interface Oil {
  readonly line: ViscosityLine;
  /** kg/m³ at 60 °F. */
  readonly density60: number;
  /** °C down to which the grade lets an engine be cranked. */
  readonly coldest: number;
  readonly assumed: readonly Assumption[];
}

const USUAL_GRADE = '5W-30';
/** kg/m³ at 60 °F (from memory: engine oils 845 to 890). */
const USUAL_DENSITY = 870;
/** Viscosity index of an oil with and without a W grade (from memory). */
const MULTIGRADE_INDEX = 150;
const MONOGRADE_INDEX = 95;
/** °C for a grade that says nothing about cold (common practice, no source). */
const NO_WINTER = 0;

/**
 * Viscosity and density of the oil: from its sheet's two viscosities, from one and the index, else typical for
 * the grade: the middle of its span at 100 °C and, cold, as thick as its W grade lets it be (SAE J300).
 */
export const oilProperties = ({ grade: gradeText, sheet }: Pick<OilPlan, 'grade' | 'sheet'>): Oil => {
  const assumed: Assumption[] = [];
  const note = (key: string, value: string, why: string): void => {
    assumed.push({ path: ['oil', key], value, why });
  };
  const named = readOilGrade(gradeText);
  const grade = named ?? (readOilGrade(USUAL_GRADE) as OilGrade);
  if (named === null) note('grade', USUAL_GRADE, `"${gradeText}" is in neither SAE J300 nor ISO 3448`);
  const density60 = sheet.density === null ? USUAL_DENSITY : densityAt60F(sheet.density, SHEET_DENSITY_AT);
  if (sheet.density === null)
    note('density', `${USUAL_DENSITY} kg/m³`, 'from memory: engine oils 845 to 890');
  const line = sheetLine(sheet, grade, note) ?? gradeLine(grade, density60, note);
  return freeze({ line, density60, coldest: grade.winter?.crankingAt ?? NO_WINTER, assumed });
};

/** °C at which sheets give a density (ISO 3675, from memory). */
const SHEET_DENSITY_AT = 15;

/** Kinematic viscosity, mm²/s at °C. */
export const kinematicViscosity = (oil: Oil, celsius: number): number => viscosityAt(oil.line, celsius);

/** kg/m³ at °C. */
export const densityOf = (oil: Oil, celsius: number): number => oilDensity(oil.density60, celsius);

type Note = (key: string, value: string, why: string) => void;

const through = (at40: number, at100: number): ViscosityLine =>
  viscosityLine({ celsius: 40, viscosity: at40 }, { celsius: 100, viscosity: at100 });

/** The line the sheet gives, or null when it gives no viscosity. */
const sheetLine = (sheet: OilSheet, grade: OilGrade, note: Note): ViscosityLine | null => {
  if (sheet.at40 === null && sheet.at100 === null) return null;
  if (sheet.at40 !== null && sheet.at100 !== null) return through(sheet.at40, sheet.at100);
  const usual = grade.winter === null ? MONOGRADE_INDEX : MULTIGRADE_INDEX;
  if (sheet.index === null) note('vi', `${usual}`, 'from memory: usual for such a grade');
  const index = sheet.index ?? usual;
  if (sheet.at100 !== null) return through(viscosityAt40(sheet.at100, index), sheet.at100);
  const at100 = viscosityAt100(sheet.at40 as number, index);
  return at100 === null ? null : through(sheet.at40 as number, at100);
};

/** A line typical for the grade. */
const gradeLine = ({ winter, hot, iso }: OilGrade, density60: number, note: Note): ViscosityLine => {
  if (iso !== null) {
    note('kv100', `${iso} mm²/s at 40 °C, index ${MONOGRADE_INDEX}`, 'the middle of ISO 3448’s span');
    return through(iso, viscosityAt100(iso, MONOGRADE_INDEX) as number);
  }
  const at100 = hot === null ? (winter?.least100 ?? 0) : (hot.least100 + hot.below100) / 2;
  if (winter === null) {
    note('kv100', `${at100.toFixed(1)} mm²/s at 100 °C, index ${MONOGRADE_INDEX}`, MIDDLE);
    return through(viscosityAt40(at100, MONOGRADE_INDEX), at100);
  }
  const { cranking, crankingAt } = winter;
  note(
    'kv100',
    `${at100.toFixed(1)} mm²/s at 100 °C, ${cranking} mPa·s at ${crankingAt} °C`.replace('-', '−'),
    `${MIDDLE}; cold, the most its W grade allows`,
  );
  // mPa·s over kg/m³ is 1000 mm²/s.
  const cold = (1000 * cranking) / oilDensity(density60, crankingAt);
  return viscosityLine({ celsius: crankingAt, viscosity: cold }, { celsius: 100, viscosity: at100 });
};

const MIDDLE = 'the middle of SAE J300’s span for the grade';

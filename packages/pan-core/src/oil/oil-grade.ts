import isoTable from './iso-grades.json' with { type: 'json' };
import table from './oil-grades.json' with { type: 'json' };

/** A grade's span of viscosity at 100 °C: at least, and below, mm²/s. */
export interface HotGrade {
  readonly grade: number;
  readonly least100: number;
  readonly below100: number;
  /** Least viscosity at 150 °C and a million per second, mPa·s. */
  readonly hths: number;
  /** The same together with 0W, 5W or 10W, where it differs. */
  readonly hthsLight?: number;
}

/** What a W grade allows when cold: cranking and pumping viscosity at most, mPa·s at °C. */
export interface WinterGrade {
  readonly grade: string;
  readonly crankingAt: number;
  readonly cranking: number;
  readonly pumpingAt: number;
  readonly pumping: number;
  /** Least viscosity at 100 °C, mm²/s (from memory). */
  readonly least100: number;
}

/** An oil by its grade: SAE J300 engine oils, or one viscosity at 40 °C by ISO 3448. */
export interface OilGrade {
  readonly winter: WinterGrade | null;
  readonly hot: HotGrade | null;
  readonly iso: number | null;
}

/** The hot grades of SAE J300 with their viscosity. */
export const hotGrades: readonly HotGrade[] = Object.freeze(table.hot);
/** The winter grades of SAE J300 with their viscosity. */
export const winterGrades: readonly WinterGrade[] = Object.freeze(table.winter);

/** Least and most viscosity at 40 °C of an ISO 3448 grade, mm²/s. */
export const isoSpan = (grade: number): readonly [number, number] => [
  grade * (1 - isoTable.band),
  grade * (1 + isoTable.band),
];

/** Reads "5W-30", "SAE 40", "20W" or "ISO VG 46"; null where it names no grade of either table. */
export const readOilGrade = (text: string): OilGrade | null => {
  const iso = /\bVG\s*(\d+)\b/i.exec(text);
  if (iso !== null) {
    const grade = Number(iso[1]);
    return isoTable.grades.includes(grade) ? { winter: null, hot: null, iso: grade } : null;
  }
  const sae = /(?:^|\s)(?:(\d+)\s*W)?(?:[\s/-]*(\d+))?\s*$/i.exec(text.replace(/^\s*SAE\b/i, ' '));
  if (sae === null) return null;
  const winter = winterGrades.find((w) => w.grade === `${sae[1]}W`) ?? null;
  const hot = hotGrades.find((h) => h.grade === Number(sae[2])) ?? null;
  const known = (sae[1] === undefined) === (winter === null) && (sae[2] === undefined) === (hot === null);
  return known && (winter !== null || hot !== null) ? { winter, hot, iso: null } : null;
};

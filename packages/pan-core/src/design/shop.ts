import type { Point2, Point3 } from './design.js';

/** The user's brake, mm; null where it was not told, and then nothing is held against it. */
export interface Brake {
  /** Longest fold it takes. */
  readonly longest: number | null;
  /** Opening of the die's V. */
  readonly die: number | null;
  /** Thickness of the punch beside the fold, over its whole height. */
  readonly punch: number | null;
}

/** What the parts are cut from. */
export interface Shop {
  /** Stock sheet: length, the way it was rolled, and width, mm. */
  readonly sheet: Point2;
  /** Bare rim all round, mm. */
  readonly edge: number;
  /** Metal between two cuts, mm; null to go by the sheet's thickness. */
  readonly gap: number | null;
  readonly brake: Brake;
  /** What prints the mock-up: the room it has, and the wall to print, mm. */
  readonly printer: { readonly bed: Point3; readonly wall: number };
}

/** Rates in one currency and times in minutes; null is not known. */
export interface Prices {
  readonly currency: string | null;
  readonly sheetPerKg: number | null;
  readonly cutPerMetre: number | null;
  readonly perPierce: number | null;
  readonly perFold: number | null;
  readonly weldPerMetre: number | null;
  readonly boughtIn: number | null;
  readonly perHour: number | null;
  readonly minutesPerPart: number | null;
  readonly minutesPerFold: number | null;
  readonly minutesPerWeldMetre: number | null;
  readonly otherHours: number | null;
  readonly bought: number | null;
}

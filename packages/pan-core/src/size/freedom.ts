import type { Edit } from './edit.js';

/** What a free value is measured in: mm, mm³ or a plain factor. */
export type FreedomKind = 'length' | 'volume' | 'factor';

/** A value of the design that may be chosen, with the places in the file that follow from it. */
export interface Freedom {
  readonly name: string;
  readonly kind: FreedomKind;
  /** What the file says now. */
  readonly now: number;
  readonly from: number;
  readonly to: number;
  /** Answers are whole multiples of it. */
  readonly step: number;
  /** Whether the range was taken from common sense instead of the user. */
  readonly rangeAssumed: boolean;
  /** What to write in the file for a value in mm, mm³ or as a factor. */
  readonly edits: (value: number) => readonly Edit[];
}

/** What the user says of a free value: null is not said. */
export interface FreeWish {
  readonly what: string;
  readonly from: number | null;
  readonly to: number | null;
  readonly step: number | null;
}

/** Values from places on the scale 0 to 1 of each freedom's range. */
export const valuesOf = (freedoms: readonly Freedom[], at: readonly number[]): readonly number[] =>
  freedoms.map(({ from, to }, i) => from + (at[i] as number) * (to - from));

export const placesOf = (freedoms: readonly Freedom[], values: readonly number[]): readonly number[] =>
  freedoms.map(({ from, to }, i) =>
    to === from ? 0 : Math.max(0, Math.min(1, ((values[i] as number) - from) / (to - from))),
  );

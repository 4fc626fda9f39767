import type { QuantityKind } from '../../units/index.js';
import type { Fault, Place } from './fault.js';

/** What a key means and takes: the one source of the reader, the editors' schema and the worksheet. */
export type Description = Common &
  (
    | { readonly form: 'section'; readonly keys: Readonly<Record<string, Description>> }
    | { readonly form: 'list'; readonly of: Description; readonly fewest: number; readonly most: number }
    | { readonly form: 'tuple'; readonly of: readonly Description[] }
    | { readonly form: 'either'; readonly of: readonly Description[] }
    | { readonly form: 'quantity'; readonly kind: QuantityKind; readonly range: string }
    | { readonly form: 'text'; readonly longest: number; readonly sample: string }
    | { readonly form: 'choice'; readonly of: readonly (string | number)[] }
    | { readonly form: 'count'; readonly from: number; readonly to: number }
    | { readonly form: 'number' }
    | { readonly form: 'flag' }
    | { readonly form: 'map' }
  );

interface Common {
  /** Short plain English. */
  readonly about: string;
  readonly required: boolean;
  /** The value taken when the key is left out, as text with its unit; null when none is. */
  readonly assumed: string | null;
  /** Whether the word `unknown` may stand here. */
  readonly mayBeUnknown: boolean;
}

/** Reads one value of the file into `T`, or reports what is wrong with it; says what it takes. */
export interface Field<T> {
  readonly read: (raw: unknown, report: Report) => T | Refusal;
  readonly about: Description;
}

/** Takes a fault, and its place within the value being read. */
export type Report = (fault: Fault, place?: Place) => void;

/** Returned by a reader that has reported a fault instead of a value. */
export const refused: unique symbol = Symbol('refused');
export type Refusal = typeof refused;

/** Reports faults of a part under its key or position. */
export const under =
  (report: Report, part: string | number): Report =>
  (fault, place = []) => {
    report(fault, [part, ...place]);
  };

export const missing: Fault = { code: 'input-missing', says: 'is missing', found: 'nothing' };

/** A key that may be left out; `assumed` is the text of the value then taken. */
export const optional = <T>(field: Field<T>, assumed: string | null = null): Field<T | undefined> => ({
  read: (raw, report) => (raw === undefined ? undefined : field.read(raw, report)),
  about: { ...field.about, required: false, assumed },
});

/** A key whose value may be the word `unknown`, read as null; it may also be left out. */
export const orUnknown = <T>(field: Field<T>): Field<T | null | undefined> => ({
  read: (raw, report) => {
    if (raw === undefined) return undefined;
    return raw === 'unknown' ? null : field.read(raw, report);
  },
  about: { ...field.about, required: false, mayBeUnknown: true },
});

/** Looks at a value that reads well and reports what is wrong with it. */
export const checked = <T>(field: Field<T>, check: (value: T, report: Report) => void): Field<T> => ({
  about: field.about,
  read: (raw, report) => {
    const value = field.read(raw, report);
    if (value !== refused) check(value as T, report);
    return value;
  },
});

import * as z from 'zod/mini';
import type { QuantityKind } from '../../units/index.js';
import { type Fault, faultOf, issueOf, type Place } from './fault.js';

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

/** Reads one value of the file into `T` and says what it takes. */
export interface Field<T> {
  readonly schema: z.ZodMiniType<T>;
  readonly about: Description;
}

export type Report = (fault: Fault, place?: Place, input?: unknown) => void;

/** Returned by a reader that has reported a fault instead of a value. */
export const refused: unique symbol = Symbol('refused');
export type Refusal = typeof refused;

/** A zod schema from a reader that reports its faults. */
export const schemaOf = <T>(read: (raw: unknown, report: Report) => T | Refusal): z.ZodMiniType<T> =>
  z.transform((raw: unknown, payload): T => {
    const value = read(raw, (fault, place = [], input = raw) => {
      payload.issues.push(issueOf(fault, input, place));
    });
    return value === refused ? z.NEVER : value;
  });

/** Runs a schema inside a reader, passing its faults on under `place`. */
export const readInto = <T>(
  schema: z.ZodMiniType<T>,
  raw: unknown,
  report: (issue: z.core.$ZodIssue) => void,
): T | Refusal => {
  const result = z.safeParse(schema, raw);
  if (result.success) return result.data;
  for (const issue of result.error.issues) report(issue);
  return refused;
};

export const missing: Fault = { code: 'input-missing', says: 'is missing', found: 'nothing' };

/** A key that may be left out; `assumed` is the text of the value then taken. */
export const optional = <T>(field: Field<T>, assumed: string | null = null): Field<T | undefined> => ({
  schema: z.optional(field.schema),
  about: { ...field.about, required: false, assumed },
});

/** A key whose value may be the word `unknown`, read as null; it may also be left out. */
export const orUnknown = <T>(field: Field<T>): Field<T | null | undefined> => ({
  schema: z.optional(
    schemaOf<T | null>((raw, report) => {
      if (raw === 'unknown') return null;
      return readInto(field.schema, raw, passOn(report));
    }),
  ),
  about: { ...field.about, required: false, mayBeUnknown: true },
});

/** Looks at a value that reads well and reports what is wrong with it. */
export const checked = <T>(field: Field<T>, check: (value: T, report: Report) => void): Field<T> => ({
  about: field.about,
  schema: schemaOf<T>((raw, report) => {
    const value = readInto(field.schema, raw, passOn(report));
    if (value !== refused) check(value as T, report);
    return value;
  }),
});

/** Passes an inner issue on as it is, its place included. */
export const passOn =
  (report: Report) =>
  (issue: z.core.$ZodIssue): void => {
    report(faultOf(issue), issue.path as Place, issue.input);
  };

import * as z from 'zod/mini';
import type { QuantityKind } from '../../units/index.js';
import type { Fault, Place } from './fault.js';
import { faultsOf, issueOf } from './issue.js';

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
    | { readonly form: 'number'; readonly from: number }
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
  /** What `read` runs, where zod decides; a field that has its own reader needs none. */
  readonly schema?: z.ZodMiniType<T>;
}

/** Takes a fault, and its place within the value being read. */
export type Report = (fault: Fault, place?: Place) => void;

/** Returned by a reader that has reported a fault instead of a value. */
export const refused: unique symbol = Symbol('refused');
export type Refusal = typeof refused;

/** A field that zod reads, its issues told in the words of the key. */
export const fieldOf = <T>(about: Description, schema: z.ZodMiniType<T>): Field<T> => ({
  about,
  schema,
  read: (raw, report) => {
    // One file is read once: compiling a function for each group would cost more than it saves.
    const result = z.safeParse(schema, raw, { jitless: true });
    if (result.success) return result.data;
    for (const { fault, place } of faultsOf(result.error.issues, about, raw)) report(fault, place);
    return refused;
  },
});

/** The schema of any field: its own reader as a step of zod's where it has no other. */
export const schemaOf = <T>(field: Field<T>): z.ZodMiniType<T> =>
  field.schema ??
  z.transform((raw: unknown, payload): T => {
    const faults: [Fault, Place][] = [];
    const value = field.read(raw, (fault, place = []) => faults.push([fault, place]));
    payload.issues.push(...faults.map(([fault, place]) => issueOf(fault, raw, place, value !== refused)));
    return value === refused ? z.NEVER : value;
  });

/** A key that may be left out; `assumed` is the text of the value then taken. */
export const optional = <T>(field: Field<T>, assumed: string | null = null): Field<T | undefined> =>
  fieldOf({ ...field.about, required: false, assumed }, z.optional(schemaOf(field)));

/** A key whose value may be the word `unknown`, read as null; it may also be left out. */
export const orUnknown = <T>(field: Field<T>): Field<T | null | undefined> => ({
  read: (raw, report) => {
    if (raw === undefined) return undefined;
    return raw === 'unknown' ? null : field.read(raw, report);
  },
  about: { ...field.about, required: false, mayBeUnknown: true },
});

/** Looks at a value that reads well and reports what is wrong with it. */
export const checked = <T>(field: Field<T>, check: (value: T, report: Report) => void): Field<T> =>
  fieldOf(
    field.about,
    schemaOf(field).check((payload) => {
      // zod goes on after a wrong length or a strange key; what it refused is no value to look at.
      if (payload.issues.some(({ code }) => code !== 'custom')) return;
      check(payload.value, (fault, place = []) => {
        payload.issues.push(issueOf(fault, payload.value, place, true));
      });
    }),
  );

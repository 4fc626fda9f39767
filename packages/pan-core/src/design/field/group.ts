import * as z from 'zod/mini';
import type { Description, Field } from './field.js';
import { fieldOf, type Refusal, refused, schemaOf } from './field.js';
import { unlike } from './unlike.js';

const common = (about: string) => ({ about, required: true, assumed: null, mayBeUnknown: false }) as const;

type Shape = Readonly<Record<string, Field<unknown>>>;
export type ValueOf<F> = F extends Field<infer T> ? T : never;
type Values<S extends Shape> = { readonly [K in keyof S]: ValueOf<S[K]> };

const mapped = <T, U>(group: Readonly<Record<string, T>>, change: (value: T) => U): Record<string, U> =>
  Object.fromEntries(Object.entries(group).map(([name, value]) => [name, change(value)]));

/** A group of keys; any other key is refused with the nearest one offered. */
export const section = <S extends Shape>(about: string, shape: S): Field<Values<S>> =>
  fieldOf(
    { form: 'section', keys: mapped(shape, (field) => field.about), ...common(about) },
    z.strictObject(mapped(shape, (field) => schemaOf(field))) as unknown as z.ZodMiniType<Values<S>>,
  );

export interface ListSize {
  readonly fewest?: number;
  readonly most?: number;
}

// The size first, and nothing of a list of the wrong size: a million entries would each be wrong too.
const sized = <T>(fewest: number, most: number, items: z.ZodMiniType<T>): z.ZodMiniType<T> =>
  z.pipe(
    z.array(z.unknown()).check(z.minLength(fewest), z.maxLength(most)),
    items as z.ZodMiniType<T, unknown[]>,
  );

export const list = <T>(about: string, of: Field<T>, size: ListSize = {}): Field<readonly T[]> => {
  const { fewest = 0, most = 100 } = size;
  return fieldOf<readonly T[]>(
    { form: 'list', of: of.about, fewest, most, ...common(about) },
    sized(fewest, most, z.array(schemaOf(of))),
  );
};

type Tuple<F extends readonly Field<unknown>[]> = { readonly [K in keyof F]: ValueOf<F[K]> };

/** A list of fixed length, each place with its own meaning. */
export const tuple = <const F extends readonly Field<unknown>[]>(
  about: string,
  parts: F,
): Field<Tuple<F>> => {
  const schemas = parts.map((part) => schemaOf(part)) as [z.ZodMiniType, ...z.ZodMiniType[]];
  return fieldOf(
    { form: 'tuple', of: parts.map((part) => part.about), ...common(about) },
    sized(parts.length, parts.length, z.tuple(schemas) as unknown as z.ZodMiniType<Tuple<F>>),
  );
};

export const choice = <const V extends string | number>(about: string, values: readonly V[]): Field<V> =>
  fieldOf<V>({ form: 'choice', of: values, ...common(about) }, z.literal([...values]));

export interface Alternative<T> {
  readonly when: (raw: unknown) => boolean;
  readonly field: Field<T>;
}

type AnyOf<A extends readonly Alternative<unknown>[]> = ValueOf<A[number]['field']>;

/**
 * One of several forms, told apart by the look of what is written, so that faults name the right one: a union
 * would list what each of them misses.
 */
export const either = <const A extends readonly Alternative<unknown>[]>(
  words: string,
  alternatives: A,
): Field<AnyOf<A>> => {
  const about: Description = {
    form: 'either',
    of: alternatives.map(({ field }) => field.about),
    ...common(words),
  };
  return {
    about,
    read: (raw, report) => {
      const chosen = alternatives.find(({ when }) => when(raw));
      if (chosen !== undefined) return chosen.field.read(raw, report) as AnyOf<A> | Refusal;
      report(unlike(about, raw));
      return refused;
    },
  };
};

export const isList = (raw: unknown): boolean => Array.isArray(raw);
export const isKeys = (raw: unknown): boolean => typeof raw === 'object' && raw !== null && !isList(raw);
export const isScalar = (raw: unknown): boolean => typeof raw === 'string' || typeof raw === 'number';

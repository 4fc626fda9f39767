import * as z from 'zod/mini';
import { nearestWord } from '../../units/index.js';
import { type Fault, foundText, type Place } from './fault.js';
import { type Description, type Field, passOn, type Report, readInto, refused, schemaOf } from './field.js';

const common = (about: string) => ({ about, required: true, assumed: null, mayBeUnknown: false }) as const;

type Shape = Readonly<Record<string, Field<unknown>>>;
export type ValueOf<F> = F extends Field<infer T> ? T : never;
type Values<S extends Shape> = { readonly [K in keyof S]: ValueOf<S[K]> };

/** A group of keys; any other key is refused with the nearest one offered. */
export const section = <S extends Shape>(about: string, shape: S): Field<Values<S>> => {
  const names = Object.keys(shape);
  const schemas = Object.fromEntries(names.map((name) => [name, (shape[name] as Field<unknown>).schema]));
  const strict = z.strictObject(schemas);
  return {
    about: {
      form: 'section',
      keys: Object.fromEntries(names.map((name) => [name, (shape[name] as Field<unknown>).about])),
      ...common(about),
    },
    schema: schemaOf((raw, report) => {
      if (raw === undefined || !isGroup(raw)) {
        const expected = `a group of keys: ${names.slice(0, 8).join(', ')}${names.length > 8 ? ', …' : ''}`;
        return notA(raw, 'is not a group of keys', expected, report);
      }
      const pass = passOn(report);
      return readInto<Values<S>>(strict as unknown as z.ZodMiniType<Values<S>>, raw, (issue) => {
        if (issue.code !== 'unrecognized_keys') return pass(issue);
        for (const key of issue.keys) report(unknownKey(key, names), [...(issue.path as Place), key]);
      });
    }),
  };
};

const unknownKey = (key: string, names: readonly string[]): Fault => {
  const near = nearestWord(key, names);
  return {
    code: 'input-key',
    says: 'is not a key that is known here',
    expected: near ?? names.join(', '),
    found: foundText(key),
    advice: near === null ? `Use one of: ${names.join(', ')}.` : `Did you mean ${near}?`,
  };
};

const isGroup = (raw: unknown): raw is Record<string, unknown> =>
  typeof raw === 'object' && raw !== null && !Array.isArray(raw);

export interface ListSize {
  readonly fewest?: number;
  readonly most?: number;
}

export const list = <T>(about: string, of: Field<T>, size: ListSize = {}): Field<readonly T[]> => {
  const fewest = size.fewest ?? 0;
  const most = size.most ?? 100;
  const items = z.array(of.schema);
  return {
    about: { form: 'list', of: of.about, fewest, most, ...common(about) },
    schema: schemaOf<readonly T[]>((raw, report) => {
      const expected = `a list of ${fewest} to ${most}: ${of.about.about}`;
      if (!Array.isArray(raw)) return notA(raw, 'is not a list', expected, report);
      if (raw.length < fewest || raw.length > most) {
        report({
          code: 'input-size',
          says: `has ${raw.length} entries; it must have ${fewest} to ${most}`,
          expected,
          found: foundText(raw),
          value: raw.length,
          limit: raw.length < fewest ? fewest : most,
          unit: 'entries',
        });
        return refused;
      }
      return readInto<readonly T[]>(items, raw, passOn(report));
    }),
  };
};

const notA = (raw: unknown, says: string, expected: string, report: Report): typeof refused => {
  if (raw === undefined) report({ code: 'input-missing', says: 'is missing', expected, found: 'nothing' });
  else if (raw === null) report({ code: 'input-missing', says: 'is empty', expected, found: 'nothing' });
  else report({ code: 'input-type', says, expected, found: foundText(raw) });
  return refused;
};

type Tuple<F extends readonly Field<unknown>[]> = { readonly [K in keyof F]: ValueOf<F[K]> };

/** A list of fixed length, each place with its own meaning. */
export const tuple = <const F extends readonly Field<unknown>[]>(
  about: string,
  parts: F,
): Field<Tuple<F>> => {
  const schemas = parts.map((part) => part.schema) as [z.ZodMiniType, ...z.ZodMiniType[]];
  const whole = z.tuple(schemas) as unknown as z.ZodMiniType<Tuple<F>>;
  const names = parts.map((part) => part.about.about).join(', ');
  return {
    about: { form: 'tuple', of: parts.map((part) => part.about), ...common(about) },
    schema: schemaOf<Tuple<F>>((raw, report) => {
      const expected = `[${names}]`;
      if (!Array.isArray(raw) || raw.length !== parts.length) {
        return notA(raw, `is not a list of ${parts.length}`, expected, report);
      }
      return readInto<Tuple<F>>(whole, raw, passOn(report));
    }),
  };
};

export const choice = <const V extends string | number>(about: string, values: readonly V[]): Field<V> => {
  const known = z.literal([...values]);
  return {
    about: { form: 'choice', of: values, ...common(about) },
    schema: schemaOf<V>((raw, report) => {
      const expected = values.length === 1 ? String(values[0]) : `one of: ${values.join(', ')}`;
      if (raw === undefined) return notA(raw, '', expected, report);
      const result = z.safeParse(known, raw);
      if (result.success) return result.data;
      const near = typeof raw === 'string' ? nearestWord(raw, values.map(String)) : null;
      const advice = near === null ? {} : { advice: `Did you mean ${near}?` };
      report({
        code: 'input-type',
        says: `cannot be ${foundText(raw)}`,
        expected,
        found: foundText(raw),
        ...advice,
      });
      return refused;
    }),
  };
};

export interface Alternative<T> {
  readonly when: (raw: unknown) => boolean;
  readonly field: Field<T>;
}

type AnyOf<A extends readonly Alternative<unknown>[]> = ValueOf<A[number]['field']>;

/** One of several forms, told apart by the look of what is written, so that faults name the right one. */
export const either = <const A extends readonly Alternative<unknown>[]>(
  about: string,
  alternatives: A,
): Field<AnyOf<A>> => ({
  about: { form: 'either', of: alternatives.map(({ field }) => field.about), ...common(about) },
  schema: schemaOf<AnyOf<A>>((raw, report) => {
    const chosen = alternatives.find(({ when }) => when(raw));
    if (chosen !== undefined)
      return readInto(chosen.field.schema as z.ZodMiniType<AnyOf<A>>, raw, passOn(report));
    const expected = alternatives.map(({ field }) => formText(field.about)).join(', or ');
    return notA(raw, `cannot be ${foundText(raw)}`, expected, report);
  }),
});

const formText = (about: Description): string => {
  if (about.form === 'section') return `a group of keys: ${Object.keys(about.keys).join(', ')}`;
  if (about.form === 'list' || about.form === 'tuple') return `a list: ${about.about}`;
  return about.about;
};

export const isList = (raw: unknown): boolean => Array.isArray(raw);
export const isKeys = (raw: unknown): boolean => isGroup(raw);
export const isScalar = (raw: unknown): boolean => typeof raw === 'string' || typeof raw === 'number';

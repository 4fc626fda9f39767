import { nearestWord } from '../../units/index.js';
import { type Fault, foundText } from './fault.js';
import { type Description, type Field, type Refusal, type Report, refused, under } from './field.js';

const common = (about: string) => ({ about, required: true, assumed: null, mayBeUnknown: false }) as const;

type Shape = Readonly<Record<string, Field<unknown>>>;
export type ValueOf<F> = F extends Field<infer T> ? T : never;
type Values<S extends Shape> = { readonly [K in keyof S]: ValueOf<S[K]> };

/** A group of keys; any other key is refused with the nearest one offered. */
export const section = <S extends Shape>(about: string, shape: S): Field<Values<S>> => {
  const names = Object.keys(shape);
  return {
    about: {
      form: 'section',
      keys: Object.fromEntries(Object.entries(shape).map(([name, field]) => [name, field.about])),
      ...common(about),
    },
    read: (raw, report) => {
      if (!isGroup(raw)) {
        const expected = `a group of keys: ${names.slice(0, 8).join(', ')}${names.length > 8 ? ', …' : ''}`;
        return notA(raw, 'is not a group of keys', expected, report);
      }
      const strange = Object.keys(raw).filter((key) => !names.includes(key));
      for (const key of strange) report(unknownKey(key, names), [key]);
      const entries = Object.entries(shape).map(
        ([name, field]) => [name, field.read(raw[name], under(report, name))] as const,
      );
      if (strange.length > 0 || entries.some(([, value]) => value === refused)) return refused;
      return Object.fromEntries(entries) as Values<S>;
    },
  };
};

const unknownKey = (key: string, names: readonly string[]): Fault => {
  const near = nearestWord(key, names);
  return {
    code: 'input-key',
    says: 'is not a key that is known here',
    expected: near ?? `one of: ${names.join(', ')}`,
    found: foundText(key),
    ...(near === null ? {} : { advice: `Did you mean ${near}?` }),
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
  return {
    about: { form: 'list', of: of.about, fewest, most, ...common(about) },
    read: (raw, report) => {
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
      // Not map, which would pass over the holes of a sparse list.
      return all(Array.from(raw, (item: unknown, i) => of.read(item, under(report, i))));
    },
  };
};

const all = <T>(values: readonly (T | Refusal)[]): readonly T[] | Refusal =>
  values.some((value) => value === refused) ? refused : (values as readonly T[]);

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
  const names = parts.map((part) => part.about.about).join(', ');
  return {
    about: { form: 'tuple', of: parts.map((part) => part.about), ...common(about) },
    read: (raw, report) => {
      const expected = `[${names}]`;
      if (!Array.isArray(raw) || raw.length !== parts.length) {
        return notA(raw, `is not a list of ${parts.length}`, expected, report);
      }
      return all(parts.map((part, i) => part.read(raw[i], under(report, i)))) as Tuple<F> | Refusal;
    },
  };
};

export const choice = <const V extends string | number>(about: string, values: readonly V[]): Field<V> => {
  return {
    about: { form: 'choice', of: values, ...common(about) },
    read: (raw, report) => {
      const expected = values.length === 1 ? String(values[0]) : `one of: ${values.join(', ')}`;
      if (raw === undefined) return notA(raw, '', expected, report);
      const known = values.find((value) => value === raw);
      if (known !== undefined) return known;
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
    },
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
  read: (raw, report) => {
    const chosen = alternatives.find(({ when }) => when(raw));
    if (chosen !== undefined) return chosen.field.read(raw, report) as AnyOf<A> | Refusal;
    const expected = alternatives.map(({ field }) => formText(field.about)).join(', or ');
    return notA(raw, `cannot be ${foundText(raw)}`, expected, report);
  },
});

const formText = (about: Description): string => {
  if (about.form === 'section') return `a group of keys: ${Object.keys(about.keys).join(', ')}`;
  if (about.form === 'list' || about.form === 'tuple') return `a list: ${about.about}`;
  return about.about;
};

export const isList = (raw: unknown): boolean => Array.isArray(raw);
export const isKeys = (raw: unknown): boolean => isGroup(raw);
export const isScalar = (raw: unknown): boolean => typeof raw === 'string' || typeof raw === 'number';

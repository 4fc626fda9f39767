import * as z from 'zod/mini';
import {
  commonUnits,
  findUnit,
  fromInside,
  kindWords,
  type QuantityKind,
  readQuantity,
  type Unit,
} from '../../units/index.js';
import { type Fault, foundText } from './fault.js';
import { type Field, fieldOf, type Refusal, type Report, refused } from './field.js';
import { MOST_NUMBER } from './unlike.js';

/** The unit of bare numbers and the units known besides the common ones. */
export interface Reading {
  readonly units: 'mm' | 'in';
  readonly extra: readonly Unit[];
  /** Told of a unit name that no table has. */
  readonly onMissingUnit: (name: string) => void;
}

/** Limits as quantities with a unit; `above` and `below` shut out the limit itself. */
export interface Range {
  readonly from?: string;
  readonly above?: string;
  readonly to?: string;
  readonly below?: string;
}

/** A bare number's unit; null where a number alone could mean two things. */
const bareUnit = (kind: QuantityKind, units: Reading['units']): string | null => {
  switch (kind) {
    case 'length':
      return units;
    case 'volume':
      return units === 'mm' ? 'L' : null;
    case 'flow':
      return units === 'mm' ? 'L/min' : null;
    case 'angle':
    case 'angle per g':
      return 'deg';
    case 'acceleration':
      return 'g';
    case 'time':
      return 's';
    case 'share':
      return '1';
  }
};

const rangeText = ({ from, above, to, below }: Range): string =>
  [
    from === undefined ? '' : `at least ${from}`,
    above === undefined ? '' : `more than ${above}`,
    to === undefined ? '' : `at most ${to}`,
    below === undefined ? '' : `less than ${below}`,
  ]
    .filter((part) => part !== '')
    .join(' and ');

export const quantity = (
  reading: Reading,
  kind: QuantityKind,
  about: string,
  range: Range = {},
  needsUnit = false,
): Field<number> => ({
  about: {
    form: 'quantity',
    kind,
    range: rangeText(range),
    about,
    required: true,
    assumed: null,
    mayBeUnknown: false,
  },
  read: (raw, report): number | Refusal => {
    if (raw === undefined)
      return refuse(report, missing, `${kindWords(kind).say}, such as ${kindWords(kind).example}`);
    if (raw === null) {
      const advice = 'Write a value, or leave the key out where it may be.';
      report({
        code: 'input-missing',
        says: 'is empty',
        expected: kindWords(kind).say,
        found: 'nothing',
        advice,
      });
      return refused;
    }
    if (raw === 'unknown') {
      const advice = 'Measure it; where a usual value is known, leave the key out to take it.';
      report({
        code: 'input-type',
        says: 'cannot be unknown',
        expected: kindWords(kind).say,
        found: 'unknown',
        advice,
      });
      return refused;
    }
    const bare = needsUnit ? null : bareUnit(kind, reading.units);
    const read = readQuantity(raw, kind, bare, reading.extra);
    if (!read.ok) {
      if (read.missing !== undefined) reading.onMissingUnit(read.missing);
      const { code, reason: says, expected, advice } = read;
      report({ code, says, expected, advice, found: foundText(raw) });
      return refused;
    }
    return withinRange(read.value, kind, range, raw, report);
  },
});

const missing: Fault = { code: 'input-missing', says: 'is missing', found: 'nothing' };

const refuse = (report: Report, fault: Fault, expected: string): Refusal => {
  report({ ...fault, expected });
  return refused;
};

const withinRange = (
  value: number,
  kind: QuantityKind,
  range: Range,
  raw: unknown,
  report: Report,
): number | Refusal => {
  for (const [side, text] of Object.entries(range) as [keyof Range, string][]) {
    const limit = readQuantity(text, kind, null);
    if (!limit.ok) throw new Error(`range ${text} is no ${kind}`);
    const broken =
      (side === 'from' && value < limit.value) ||
      (side === 'above' && value <= limit.value) ||
      (side === 'to' && value > limit.value) ||
      (side === 'below' && value >= limit.value);
    if (!broken) continue;
    const [number = '', ...unitWords] = text.split(' ');
    const name = unitWords.join(' ');
    const unit = findUnit(commonUnits, kind, name);
    const shown = unit === undefined ? value : fromInside(value, unit);
    report({
      code: 'input-range',
      says: `is ${Number(shown.toPrecision(6))} ${name}; it must be ${rangeText(range)}`,
      expected: rangeText(range),
      found: foundText(raw),
      value: shown,
      limit: Number(number),
      unit: name,
    });
    return refused;
  }
  return value;
};

const common = (about: string) => ({ about, required: true, assumed: null, mayBeUnknown: false }) as const;

// A name goes into drawings, file names and tables: control characters could forge lines there.
const VISIBLE = /^[^\p{Cc}\p{Cf}\p{Zl}\p{Zp}]*$/u;

export const text = (about: string, longest: number, sample: string): Field<string> =>
  fieldOf(
    { form: 'text', longest, sample, ...common(about) },
    z.pipe(
      z.transform((raw: unknown) => (typeof raw === 'number' ? String(raw) : raw)),
      z
        .string()
        .check(z.trim(), z.minLength(1), z.maxLength(longest), z.regex(VISIBLE)) as unknown as z.ZodMiniType<
        string,
        unknown
      >,
    ),
  );

export const flag = (about: string): Field<boolean> =>
  fieldOf({ form: 'flag', ...common(about) }, z.boolean());

export const count = (about: string, from: number, to: number): Field<number> =>
  fieldOf(
    { form: 'count', from, to, ...common(about) },
    z.number().check(z.multipleOf(1), z.gte(from), z.lte(to)),
  );

export const plainNumber = (about: string, from = 0): Field<number> =>
  fieldOf({ form: 'number', from, ...common(about) }, z.number().check(z.gte(from), z.lte(MOST_NUMBER)));

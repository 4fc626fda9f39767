import {
  commonUnits,
  findUnit,
  fromInside,
  kindWords,
  type QuantityKind,
  readQuantity,
  type Unit,
} from '../../units/index.js';
import { foundText } from './fault.js';
import { type Field, missing, type Refusal, type Report, refused } from './field.js';

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

const refuse = (report: Report, fault: typeof missing, expected: string): Refusal => {
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
const CONTROL = /[\p{Cc}\p{Cf}\p{Zl}\p{Zp}]/u;

export const text = (about: string, longest: number, sample: string): Field<string> => ({
  about: { form: 'text', longest, sample, ...common(about) },
  read: (raw, report): string | Refusal => {
    const expected = `a text of at most ${longest} characters, such as ${sample}`;
    const found = foundText(raw);
    if (raw === undefined) return refuse(report, missing, expected);
    if (typeof raw !== 'string' && typeof raw !== 'number') {
      report({ code: 'input-type', says: 'is not a text', expected, found });
      return refused;
    }
    const value = String(raw).trim();
    if (value === '') {
      report({ code: 'input-missing', says: 'is empty', expected, found: 'nothing' });
      return refused;
    }
    if (value.length > longest) {
      report({
        code: 'input-size',
        says: `is ${value.length} characters long; it may have ${longest}`,
        expected,
        found,
        value: value.length,
        limit: longest,
        unit: 'characters',
      });
      return refused;
    }
    if (CONTROL.test(value)) {
      const advice = 'Keep it on one line of plain text.';
      report({
        code: 'input-type',
        says: 'has a line break or an invisible character',
        expected,
        found,
        advice,
      });
      return refused;
    }
    return value;
  },
});

export const flag = (about: string): Field<boolean> => ({
  about: { form: 'flag', ...common(about) },
  read: (raw, report): boolean | Refusal => {
    if (typeof raw === 'boolean') return raw;
    const expected = 'true or false';
    if (raw === undefined) return refuse(report, missing, expected);
    report({ code: 'input-type', says: 'is neither true nor false', expected, found: foundText(raw) });
    return refused;
  },
});

const numberIn = (from: number, to: number, whole: boolean) => {
  const expected = `${whole ? 'a whole number' : 'a number'} from ${from} to ${to}, without a unit`;
  return (raw: unknown, report: Report): number | Refusal => {
    if (raw === undefined) return refuse(report, missing, expected);
    if (typeof raw !== 'number' || !Number.isFinite(raw) || (whole && !Number.isInteger(raw))) {
      const says = whole ? 'is not a whole number' : 'is not a number';
      report({ code: 'input-type', says, expected, found: foundText(raw) });
      return refused;
    }
    if (raw < from || raw > to) {
      const says = `is ${raw}; it must be from ${from} to ${to}`;
      report({
        code: 'input-range',
        says,
        expected,
        found: foundText(raw),
        value: raw,
        limit: raw < from ? from : to,
      });
      return refused;
    }
    return raw;
  };
};

export const count = (about: string, from: number, to: number): Field<number> => ({
  about: { form: 'count', from, to, ...common(about) },
  read: numberIn(from, to, true),
});

export const plainNumber = (about: string): Field<number> => ({
  about: { form: 'number', ...common(about) },
  read: numberIn(0, 1e9, false),
});

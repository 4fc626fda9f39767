import { readWritten } from './grammar.js';
import { nearestWord } from './nearest.js';
import {
  commonUnits,
  findUnit,
  kindWords,
  offeredFor,
  type QuantityKind,
  toInside,
  type Unit,
} from './unit.js';

/** A quantity that reads: its value in inside units. */
export interface Read {
  readonly ok: true;
  /** In the kind's inside unit: mm, mm³, rad, g, mm³/s, s, rad per g, or a share of 1. */
  readonly value: number;
}

/** A quantity that does not read, and why. */
export interface Refused {
  readonly ok: false;
  readonly code: 'input-type' | 'input-unit';
  /** Completes a sentence whose subject is the place: "has a comma in the number". */
  readonly reason: string;
  readonly expected: string;
  readonly advice: string;
  /** A unit name that is in no table yet but might be known to mathjs; see `loadUnits`. */
  readonly missing?: string;
}

/**
 * Reads one quantity. A bare number takes `bare`; when that is null a unit must be written.
 *
 * @param raw a number, or text such as `5 1/2 in`; anything else is refused
 * @param extra units loaded by `loadUnits`, searched after the common ones
 */
export const readQuantity = (
  raw: unknown,
  kind: QuantityKind,
  bare: string | null,
  extra: readonly Unit[] = [],
): Read | Refused => {
  const words = kindWords(kind);
  const expected = `${words.say}, such as ${words.example}`;
  if (typeof raw !== 'number' && typeof raw !== 'string') {
    return {
      ok: false,
      code: 'input-type',
      reason: `is not ${words.say}`,
      expected,
      advice: `Write ${words.example}.`,
    };
  }
  const written = typeof raw === 'number' ? { value: raw, unit: '' } : readWritten(raw);
  if ('reason' in written) return { ok: false, code: 'input-type', expected, ...written };
  if (!Number.isFinite(written.value)) {
    const advice = 'Write the number out in figures.';
    return { ok: false, code: 'input-type', reason: 'is not a finite number', expected, advice };
  }
  if (written.unit === '' && bare === null) {
    const reason = kind === 'share' ? 'is not a share' : 'has no unit';
    return { ok: false, code: 'input-unit', reason, expected, advice: `Add the unit: ${words.example}.` };
  }
  const name = written.unit === '' ? (bare as string) : written.unit;
  if (kind === 'share' && name === '1') return { ok: true, value: written.value };
  const unit = findUnit(commonUnits, kind, name) ?? findUnit(extra, kind, name);
  if (unit === undefined)
    return { ok: false, code: 'input-unit', expected, ...refuseUnit(name, kind, extra) };
  return { ok: true, value: toInside(written.value, unit) };
};

const refuseUnit = (
  name: string,
  kind: QuantityKind,
  extra: readonly Unit[],
): Pick<Refused, 'reason' | 'advice' | 'missing'> => {
  const words = kindWords(kind);
  const offered = offeredFor(name);
  if (offered !== null) {
    return {
      reason: `has the unit ${name}, which means different sizes in different places`,
      advice: `Write ${offered.join(' or ')}.`,
    };
  }
  const names = commonUnits.filter((unit) => unit.kind === kind).map((unit) => unit.name);
  const sameButCase = names.find((known) => known.toLowerCase() === name.toLowerCase());
  if (sameButCase !== undefined) {
    return { reason: `has the unit ${name}, which is not known`, advice: `Write ${sameButCase}.` };
  }
  const other = [...commonUnits, ...extra].find((unit) => unit.name === name);
  if (other !== undefined) {
    return {
      reason: `has the unit ${name}, which measures ${kindWords(other.kind).say}`,
      advice: `Write ${words.say}, such as ${words.example}.`,
    };
  }
  const near = nearestWord(name, names);
  return {
    reason: `has the unit ${name}, which is not known`,
    advice: near === null ? `Write ${words.say}, such as ${words.example}.` : `Did you mean ${near}?`,
    missing: name,
  };
};

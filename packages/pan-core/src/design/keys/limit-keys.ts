import { commonUnits, findUnit, fromInside, type QuantityKind, readQuantity } from '../../units/index.js';
import { type Field, foundText, type Reading, type Refusal, refused } from '../field/index.js';

/** Each limit in the unit of its kind; null where the file gives a bare number, which is in the check's own. */
export type LimitKeys = Readonly<Record<string, { readonly value: number; readonly unit: string | null }>>;

/** A limit is compared in the unit the check prints, so each kind has one. */
const PRINTED: readonly (readonly [QuantityKind, string])[] = [
  ['length', 'mm'],
  ['volume', 'L'],
  ['acceleration', 'g'],
  ['angle', 'deg'],
  ['time', 's'],
];

const readLimit = (raw: unknown, reading: Reading): LimitKeys[string] | null => {
  if (typeof raw === 'number') return Number.isFinite(raw) ? { value: raw, unit: null } : null;
  for (const [kind, name] of PRINTED) {
    const read = readQuantity(raw, kind, null, reading.extra);
    const unit = findUnit(commonUnits, kind, name);
    if (read.ok && unit !== undefined && !(kind === 'acceleration' && /deg|rad|°/.test(String(raw)))) {
      return { value: fromInside(read.value, unit), unit: name };
    }
  }
  return null;
};

const MOST = 100;

/** Check ids with the limit to hold instead: a quantity, or a bare number in the unit the check prints. */
export const limitsField = (reading: Reading): Field<LimitKeys> => ({
  about: {
    form: 'map',
    about: 'limits of checks by their id; a bare number is in the unit the check prints',
    required: true,
    assumed: null,
    mayBeUnknown: false,
  },
  read: (raw, report): LimitKeys | Refusal => {
    const expected = 'check ids with a limit each, such as ground: 90 mm';
    if (typeof raw !== 'object' || raw === null || Array.isArray(raw)) {
      report({ code: 'input-type', says: 'is not a group of keys', expected, found: foundText(raw) });
      return refused;
    }
    const entries = Object.entries(raw);
    if (entries.length > MOST) {
      report({
        code: 'input-size',
        says: `has ${entries.length} keys; it may have ${MOST}`,
        expected,
        value: entries.length,
        limit: MOST,
      });
      return refused;
    }
    const taken = new Map<string, LimitKeys[string]>();
    for (const [id, value] of entries) {
      const limit = readLimit(value, reading);
      if (!/^[a-z][a-z0-9_]{0,59}$/.test(id)) {
        report({ code: 'input-key', says: 'is not the id of a check', expected, found: foundText(id) }, [id]);
      } else if (limit === null) {
        report(
          {
            code: 'input-type',
            says: 'is not a limit',
            expected: 'a number or a quantity such as 90 mm',
            found: foundText(value),
          },
          [id],
        );
      } else taken.set(id, limit);
    }
    return Object.fromEntries(taken);
  },
});

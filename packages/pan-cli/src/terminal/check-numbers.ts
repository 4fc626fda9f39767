import type { Check, Status } from 'pan-core';
import type { LengthUnits } from '../commands/command.js';
import { pair, quantity } from './quantity.js';

/** Capitals for what stops the work, so that the word alone carries it without colour. */
export const stateWord = (status: Status): string =>
  ({ pass: 'pass', warn: 'warn', fail: 'FAIL', unknown: 'UNKNOWN' })[status];

/** Which side of the limit is wanted follows from the sign of the margin. */
const bound = ({ value, limit, margin }: Check): string => {
  if (value === null || limit === null || value === limit || margin === 0) return '';
  return value > limit === margin > 0 ? '≥ ' : '≤ ';
};

/** What a check found and what is wanted, in words; either may be empty. */
export const checkNumbers = (check: Check, units: LengthUnits): [string, string] => {
  const { value, limit, unit } = check;
  if (value !== null && limit !== null) {
    const [is, wants] = pair(value, limit, unit, units);
    return [is, bound(check) + wants];
  }
  return [
    value === null ? (check.status === 'unknown' ? 'not known' : '') : quantity(value, unit, units),
    limit === null ? '' : quantity(limit, unit, units),
  ];
};

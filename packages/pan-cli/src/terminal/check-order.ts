import type { Check, CheckGroup, Status } from 'pan-core';

/** Groups as a report lists them. */
export const GROUPS: readonly CheckGroup[] = ['oil', 'mouth', 'crank', 'fit', 'sheet', 'weld'];
/** The worst first. */
export const STATUSES: readonly Status[] = ['fail', 'unknown', 'warn', 'pass'];

/** A pan that passes is ready to be mocked up, never simply ready: geometry is no proof. */
export const VERDICT: Readonly<Record<Status, string>> = {
  fail: 'Not ready to cut',
  unknown: 'Not ready to cut: measure first',
  warn: 'Ready for the mock-up, with warnings',
  pass: 'Ready for the mock-up',
};

export const worstFirst = (checks: readonly Check[]): readonly Check[] =>
  [...checks].sort((a, b) => STATUSES.indexOf(a.status) - STATUSES.indexOf(b.status) || a.margin - b.margin);

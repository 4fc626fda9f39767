import type { Status } from './report.js';

/** How rows came out: how many of each, and the worst of them. */
export interface Tally {
  readonly counts: Readonly<Record<Status, number>>;
  readonly verdict: Status;
}

/** Worst first. */
export const RANK: Readonly<Record<Status, number>> = { fail: 0, unknown: 1, warn: 2, pass: 3 };

export const tally = (rows: readonly { readonly status: Status }[]): Tally => {
  const count = (status: Status): number => rows.filter((row) => row.status === status).length;
  const counts = { pass: count('pass'), warn: count('warn'), fail: count('fail'), unknown: count('unknown') };
  const verdict =
    counts.fail > 0 ? 'fail' : counts.unknown > 0 ? 'unknown' : counts.warn > 0 ? 'warn' : 'pass';
  return { counts, verdict };
};

import type { Check, CheckGroup, Status } from './report.js';

/** How much of a unit counts as one step when margins of unlike checks are put in order. */
const SCALE: Readonly<Record<string, number>> = {
  mm: 10,
  L: 0.5,
  s: 2,
  g: 0.2,
  deg: 2,
  'm/s': 0.5,
  mm2: 200,
};

export interface Rule {
  readonly id: string;
  readonly group: CheckGroup;
  readonly title: string;
  readonly unit: string;
  readonly value: number | null;
  /** The limit in force, the user's own taken in already. */
  readonly limit: number;
  readonly wants: 'at least' | 'at most';
  /** What a miss is: a fail stops the cut, a warning does not. */
  readonly miss: 'fail' | 'warn';
  readonly because: string;
  readonly fix: string;
}

/** Slack in the check's unit as a plain number, so that margins of unlike checks can be put in order. */
export const marginOf = (slack: number, unit: string, limit: number): number =>
  slack / (SCALE[unit] ?? Math.max(Math.abs(limit), 1));

/** A row of the report: compares once, in one place. A value that is not known is `unknown`. */
export const judge = (rule: Rule): Check => {
  const { value, limit, unit, wants } = rule;
  const slack = value === null ? Number.NaN : wants === 'at least' ? value - limit : limit - value;
  // A size worked out to land on its limit must pass, whatever its last digit says.
  const held = slack >= -1e-9 * Math.max(1, Math.abs(limit));
  // What can only warn cannot hold a design up by not being known; what must be known has a row of its own.
  const missing: Status = rule.miss === 'fail' ? 'unknown' : 'warn';
  const status: Status = value === null ? missing : held ? 'pass' : rule.miss;
  return {
    id: rule.id,
    group: rule.group,
    title: rule.title,
    status,
    value,
    limit,
    unit,
    because: rule.because,
    try: status === 'pass' ? '' : rule.fix,
    margin: value === null ? 0 : marginOf(slack, unit, limit),
  };
};

/** The user's own limit for a check, or for all of its kind, else the usual one. */
export const limitFor = (
  limits: Readonly<Record<string, number>>,
  ids: readonly string[],
  usual: number,
): number => {
  for (const id of ids) {
    const own = limits[id];
    if (own !== undefined) return own;
  }
  return usual;
};

import type { Edit } from './edit.js';
import type { FreeWish } from './freedom.js';
import type { GoalName } from './goal.js';

/** A figure that must be kept while another is sought: no more of a least, no less of a most. */
export interface Kept {
  readonly goal: GoalName;
  readonly figure: number;
}

/** What is asked of a design file, as plain data that a worker can be sent. */
export interface SizeRequest {
  readonly goal: GoalName;
  readonly free: readonly FreeWish[];
  /** Checks that would only warn and are to hold as well. */
  readonly hold: readonly string[];
  readonly seed: number;
  /** Changes made to the file before anything else. */
  readonly start: readonly Edit[];
  /** The only checks that count, or null for all. */
  readonly only: readonly string[] | null;
  /** A check that need not hold and is to come as near as it can, in place of the goal; or null. */
  readonly ease: string | null;
  /** Range of a factor on every case's g that may be chosen too, or null. */
  readonly severity: readonly [number, number] | null;
  readonly kept: readonly Kept[];
}

/** A plain request: every check counts, and nothing is changed but what is free. */
export const requestFor = (
  goal: GoalName,
  free: readonly FreeWish[] = [],
  more: Partial<SizeRequest> = {},
): SizeRequest => ({
  goal,
  free,
  hold: [],
  seed: 1,
  start: [],
  only: null,
  ease: null,
  severity: goal === 'most g' ? [1, 3] : null,
  kept: [],
  ...more,
});

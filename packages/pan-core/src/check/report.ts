import type { Assumption, Unknown } from '../design/index.js';
import type { Grounds } from './grounds.js';
import type { SupplyReport } from './supply-report.js';

/** How a check ends: `unknown` is a value that must be measured first. */
export type Status = 'pass' | 'warn' | 'fail' | 'unknown';
/** The part of the job a check belongs to. */
export type CheckGroup = 'oil' | 'mouth' | 'crank' | 'fit' | 'sheet' | 'weld';

/** One question answered. `value` and `limit` share `unit`; null is not known or does not apply. */
export interface Check {
  readonly id: string;
  readonly group: CheckGroup;
  /** A few words for the table's first column. */
  readonly title: string;
  readonly status: Status;
  readonly value: number | null;
  readonly limit: number | null;
  readonly unit: string;
  readonly because: string;
  /** What to change and by how much; empty when nothing is needed. */
  readonly try: string;
  /** How far inside the limit, in parts of the limit's own scale; negative fails, smallest binds first. */
  readonly margin: number;
}

/** What the pan holds, in L, by the names of the JSON contract. */
export interface Capacity {
  readonly to_rail_L: number;
  readonly sharp_L: number;
  readonly shallow_L: number;
  readonly sump_L: number;
  readonly never_returns_L: number;
}

/** How deep one throw's sweep dips in one manoeuvre, in the worse of its two states. */
export interface CrankDipRow {
  readonly case: string;
  /** Counted from 1 at the rear. */
  readonly throw: number;
  readonly x_mm: number;
  /** Negative is clear by as much; null with no oil below it. */
  readonly depth_mm: number | null;
  readonly state: 'held' | 'settled' | null;
}

/** Every check with its value, limit, reason and remedy, in the order a person should read them. */
export interface CheckReport {
  readonly title: string;
  readonly verdict: Status;
  readonly counts: Readonly<Record<Status, number>>;
  /** The binding constraint and the one after it; null when nothing fails or warns. */
  readonly first: Check | null;
  readonly next: Check | null;
  readonly capacity: Capacity;
  readonly levels: { readonly stopped_mm: number | null; readonly running_mm: number | null };
  readonly oil: {
    readonly poured_L: number;
    readonly stopped_in_pan_L: number;
    readonly running_in_pan_L: number;
  };
  /** What the pump pulls against, cold to hot; null where the tube's way or the pump's flow is not known. */
  readonly supply: SupplyReport | null;
  /** How the engine moves while fit is judged, in words; empty when it stands still. */
  readonly engine_moves: string;
  /** Case by case, every throw; empty where the throws are not known. */
  readonly crank_dip: readonly CrankDipRow[];
  readonly checks: readonly Check[];
  /** What each check's value, litre and level leans on besides the file's own measurements, by check or key. */
  readonly rests_on: Readonly<Record<string, Grounds>>;
  readonly assumed: readonly Assumption[];
  readonly unknown: readonly Unknown[];
  /** Which measurement to repeat first, because it decides. */
  readonly measureAgain: readonly string[];
  readonly sayings: readonly string[];
}

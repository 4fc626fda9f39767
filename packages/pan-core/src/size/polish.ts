import { bentMargins, bestStep } from './best-step.js';
import type { SizeProblem } from './problem.js';
import { type Slopes, slopesAt } from './slope.js';
import { ask, isBetter, type Search, type Trial } from './trial.js';
import type { Verdict } from './verdict.js';

/** Furthest a step goes at first and at last, as a share of each range. */
const FIRST_REACH = 0.2;
const MOST_STEPS = 40;
/** A gain in cost, in the goal's own scale, that is worth another two steps. */
const WORTH = 5e-4;

/** Below this miss a place counts as near enough to weigh its miss against its cost, and by how much. */
const NEAR = 0.05;
const MISS = 20;
/** Aimed this far inside the limits, in the scale of margins, so that rounding does not end a step outside. */
const INSIDE = 1e-6;

export interface Polished {
  readonly best: Trial;
  /** Slopes about a place at or beside the best. */
  readonly slopes: Slopes | null;
}

/** The best, with the checks that stopped designs on the way to it. */
export interface Found extends Polished {
  readonly binding: ReadonlySet<string>;
  /** Every trial of the search, for whoever asks what could not be had. */
  readonly seen: readonly Trial[];
}

/**
 * Follows cost and margins downhill by straight-line models within a reach that grows and shrinks with their
 * success, each step the best of a linear program (successive linear programming: Fletcher, Practical Methods
 * of Optimization, 2nd ed., section 12.3). A step may miss by a little what it gains more by, and the next one
 * mends it: limits that bend are followed in long steps. Ends on the limits themselves, where the best pans are.
 *
 * @param binding ids of checks known to stop a design; more are added as they are met
 * @param last reach at which the answer is fine enough, as a share of the ranges
 */
export function* polish(
  problem: SizeProblem,
  start: Trial,
  binding: Set<string>,
  { last, toBeat }: { readonly last: number; readonly toBeat: Verdict | null },
): Search<Polished> {
  let reach = FIRST_REACH;
  let base = start;
  let best = start;
  const costs: number[] = [];
  let slopes: Slopes | null = null;
  let fresh = false;
  for (let step = 0; step < MOST_STEPS && reach > last; step++) {
    if (isSlow(costs, base.verdict, toBeat)) break;
    costs.push(merit(base.verdict));
    if (!fresh || slopes === null) {
      slopes = yield* slopesAt(problem, base, Math.min(1e-3, reach / 4));
      for (const { verdict } of slopes.trials) learn(binding, verdict);
      const nearer = slopes.trials.reduce((a, b) => (isBetter(b.verdict, a.verdict) ? b : a), base);
      best = slopes.trials.reduce((a, b) => (isBetter(b.verdict, a.verdict) ? b : a), best);
      fresh = true;
      if (nearer !== base && base.verdict.broken !== null) {
        base = nearer;
        fresh = false;
        continue;
      }
    }
    const near = { base, slopes, binding, reach };
    const move = bestStep(near, (_, margin) => margin - INSIDE);
    if (Math.max(...move.map(Math.abs)) < last / 4) break;
    const [full, half] = yield* ask(problem, [
      moved(base.at, move),
      moved(
        base.at,
        move.map((d) => d / 2),
      ),
    ]);
    if (full === undefined || half === undefined) break;
    learn(binding, full.verdict);
    learn(binding, half.verdict);
    const tries = [full, half];
    if (full.verdict.broken === null && full.verdict.miss > 0) {
      const mended = bestStep(near, bentMargins(move, full.verdict));
      tries.push(...(yield* ask(problem, [moved(base.at, mended)])));
    }
    best = tries.reduce((a, b) => (isBetter(b.verdict, a.verdict) ? b : a), best);
    const found = tries.reduce((a, b) => (isNearer(b.verdict, a.verdict) ? b : a), base);
    if (found === base) {
      reach *= 0.3;
      continue;
    }
    if (found !== half) reach = Math.min(0.5, reach * 1.7);
    base = found;
    fresh = false;
  }
  return { best, slopes };
}

const merit = ({ cost, miss }: Verdict): number =>
  miss > NEAR ? Number.POSITIVE_INFINITY : cost + MISS * miss;

/** Near the limits by cost and miss together (an exact penalty: Fletcher, as above, section 12.3), else as always. */
const isNearer = (a: Verdict, b: Verdict): boolean =>
  a.miss <= NEAR && b.miss <= NEAR ? merit(a) < merit(b) : isBetter(a, b);

/** Whether six steps together have gained next to nothing, or twelve have not come near what is to be beaten. */
const isSlow = (costs: readonly number[], now: Verdict, toBeat: Verdict | null): boolean => {
  const before = costs[costs.length - 6];
  if (now.miss <= NEAR && before !== undefined && before - merit(now) < WORTH) return true;
  return costs.length >= 12 && toBeat !== null && toBeat.miss === 0 && merit(now) > toBeat.cost + 0.5;
};

/** Notes which checks stop a design, from a design they have stopped. */
export const learn = (binding: Set<string>, { rows }: Verdict): void => {
  for (const { id, missed } of rows) if (missed) binding.add(id);
};

const moved = (at: readonly number[], move: readonly number[]): readonly number[] =>
  at.map((x, i) => Math.max(0, Math.min(1, x + (move[i] as number))));

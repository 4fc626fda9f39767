import { seededStream } from '../numeric/index.js';
import { cloudAbout } from './cloud.js';
import { evolve } from './evolve.js';
import { placesOf } from './freedom.js';
import { type Found, learn, type Polished, polish } from './polish.js';
import type { SizeProblem } from './problem.js';
import { spreadPoints } from './spread.js';
import { ask, bestOf, isBetter, type Search, type Trial } from './trial.js';
import { inWholeSteps } from './whole-step.js';

/** Places about the best of which one is polished anew, and what a miss weighs against cost in choosing it. */
const CLOUD = 8;
const MISS = 3;

/** How far apart two starts must lie to be worth polishing both, as a share of a range. */
const APART = 0.08;

export interface Effort {
  /** Places looked at first, rounds of evolution after them, and how many are polished. */
  readonly first: number;
  readonly rounds: number;
  readonly starts: number;
  /** How far about the best it is looked for better ones once more, as shares of the ranges, one after another. */
  readonly about: readonly number[];
}

/** Wide to leave a corner that is not the best one, narrow to gain what is left in it. */
const ABOUT = [0.08, 0.03, 0.08, 0.03];

/** Enough for the count of free values: few can be covered evenly, many are better bred. */
export const usualEffort = (free: number): Effort => {
  if (free <= 1) return { first: 25, rounds: 0, starts: 4, about: [] };
  if (free === 2) return { first: 48, rounds: 2, starts: 4, about: [] };
  return { first: Math.min(96, 24 + 6 * free), rounds: Math.min(14, 6 + free), starts: 3, about: ABOUT };
};

/** For a side question, of which many are asked: half as wide a look. */
export const sideEffort = (free: number): Effort => {
  const { first, rounds } = usualEffort(free);
  return {
    first: Math.ceil(first / 2),
    rounds: Math.floor(rounds / 2),
    starts: free <= 2 ? 2 : 1,
    about: [],
  };
};

/** The best design there is to be found, passing where one passes, before rounding. */
export function* bestDesign(problem: SizeProblem, effort: Effort): Search<Found> {
  const { freedoms, request } = problem;
  const random = seededStream(request.seed);
  const binding = new Set<string>();
  const now = placesOf(
    freedoms,
    freedoms.map((one) => one.now),
  );
  const spread = spreadPoints(
    effort.first,
    freedoms.map(() => random()),
  );
  const first = yield* ask(problem, [now, now.map(() => 0.5), ...spread]);
  for (const { verdict } of first) learn(binding, verdict);
  const pool = [...first].sort(byWorth).slice(0, Math.max(8, Math.min(32, first.length >> 1)));
  const bred = yield* evolve(problem, pool, effort.rounds, random);
  const seen = [...first, ...bred];
  for (const { verdict } of bred) learn(binding, verdict);
  const last = fineness(problem);
  let best: Polished = { best: bestOf(seen), slopes: null };
  for (const start of distinct(seen, effort.starts)) {
    // Other starts seldom end lower than what is found about the first that passes.
    if (effort.about.length > 0 && best.slopes !== null && best.best.verdict.miss === 0) break;
    const found = yield* polish(problem, start, binding, {
      last,
      toBeat: best.slopes === null ? null : best.best.verdict,
    });
    seen.push(found.best);
    if (best.slopes === null || isBetter(found.best.verdict, best.best.verdict)) best = found;
  }
  for (const spread of best.best.verdict.miss > 0 ? [] : effort.about) {
    const cloud = yield* ask(problem, cloudAbout(best.best, CLOUD, spread, random));
    const start = cloud.reduce((a, b) => (promise(b) < promise(a) ? b : a));
    if (start.verdict.broken !== null) continue;
    const found = yield* polish(problem, start, binding, { last, toBeat: best.best.verdict });
    seen.push(found.best);
    if (isBetter(found.best.verdict, best.best.verdict)) best = found;
  }
  return { ...best, binding, seen };
}

/** The best design in whole steps of its values. */
export function* sizedDesign(problem: SizeProblem): Search<Found> {
  const effort = usualEffort(problem.freedoms.length);
  const found = yield* bestDesign(problem, effort);
  if (found.best.verdict.miss > 0) return found;
  return { ...found, best: yield* inWholeSteps(problem, found) };
}

/** A fraction of the smallest step of any value, as a share of its range. */
const fineness = ({ freedoms }: SizeProblem): number =>
  freedoms.reduce((a, { step, from, to }) => (to === from ? a : Math.min(a, step / (to - from) / 20)), 1e-4);

const byWorth = (a: Trial, b: Trial): number =>
  a.verdict.miss - b.verdict.miss || (a.verdict.miss > 0 ? 0 : a.verdict.cost - b.verdict.cost);

const promise = ({ verdict: { miss, cost } }: Trial): number => cost + MISS * miss;

const distinct = (trials: readonly Trial[], count: number): readonly Trial[] => {
  const kept: Trial[] = [];
  for (const trial of [...trials].sort(byWorth)) {
    if (kept.length === count) break;
    const near = kept.some((one) => one.at.every((x, i) => Math.abs(x - (trial.at[i] as number)) < APART));
    if (!near) kept.push(trial);
  }
  return kept;
};

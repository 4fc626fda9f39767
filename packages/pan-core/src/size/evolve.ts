import type { SizeProblem } from './problem.js';
import { askUntil, isBetter, type Search, type Trial } from './trial.js';
import { quickCost } from './verdict.js';

/** Weight of a difference and share of coordinates taken from it (Storn and Price, J. Global Optimization 11, 1997). */
const WEIGHT = 0.6;
const CROSS = 0.85;

/**
 * Differential evolution over the unit cube: each place is moved by the difference of two others, half of them
 * towards the best, and kept if better. A place whose cost alone rules it out is never asked about.
 */
export function* evolve(
  problem: SizeProblem,
  start: readonly Trial[],
  generations: number,
  random: () => number,
): Search<readonly Trial[]> {
  let trials = [...start];
  for (let generation = 0; generation < generations; generation++) {
    const best = trials.reduce((a, b) => (isBetter(b.verdict, a.verdict) ? b : a));
    const moved = trials.map((trial, i) => ({ i, at: movedPlace(trials, trial, best, random) }));
    const worth = moved.filter(({ i, at }) => {
      const { miss, cost } = (trials[i] as Trial).verdict;
      if (miss > 0) return true;
      const told = quickCost(problem, at);
      return told === null || told < cost;
    });
    const found = yield* askUntil(
      problem,
      worth.map(({ i, at }) => ({ at, enough: (trials[i] as Trial).verdict.miss })),
    );
    const next = [...trials];
    found.forEach((trial, k) => {
      const { i } = worth[k] as { i: number };
      if (isBetter(trial.verdict, (trials[i] as Trial).verdict)) next[i] = trial;
    });
    trials = next;
  }
  return trials;
}

const movedPlace = (
  trials: readonly Trial[],
  own: Trial,
  best: Trial,
  random: () => number,
): readonly number[] => {
  const any = (): Trial => trials[Math.floor(random() * trials.length)] as Trial;
  const [a, b, c] = [any(), any(), any()];
  const from = random() < 0.5 ? best : a;
  const sure = Math.floor(random() * own.at.length);
  return own.at.map((x, i) => {
    const taken = i === sure || random() < CROSS;
    const moved = (from.at[i] as number) + WEIGHT * ((b.at[i] as number) - (c.at[i] as number));
    if (!taken) return x;
    // Past an end of the range it is turned back, half way to the end.
    if (moved < 0) return x / 2;
    return moved > 1 ? (x + 1) / 2 : moved;
  });
};

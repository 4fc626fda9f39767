import { power } from '../numeric/index.js';
import { alongStep, bestStep, withSlack } from './best-step.js';
import { type Freedom, placesOf, valuesOf } from './freedom.js';
import type { Found } from './polish.js';
import type { SizeProblem } from './problem.js';
import type { Slopes } from './slope.js';
import { ask, isBetter, type Search, type Trial } from './trial.js';

/** Most roundings looked at, and how many are asked about at once. */
const MOST_CORNERS = 1024;
const MOST_ASKED = 48;
const AT_ONCE = 8;
const MOST_ROUNDS = 6;

/**
 * The same answer in whole steps of each value, still passing: of the roundings up and down, those that the
 * slopes say pass at least cost are asked about first; then single steps each way as long as one is better.
 */
export function* inWholeSteps(problem: SizeProblem, { best, slopes, binding }: Found): Search<Trial> {
  const { freedoms } = problem;
  const corners = roundings(best, slopes, freedoms);
  let found: Trial | null = null;
  for (let i = 0; i < Math.min(corners.length, MOST_ASKED) && found === null; i += AT_ONCE) {
    const trials = yield* ask(problem, corners.slice(i, i + AT_ONCE));
    found = trials.reduce<Trial | null>(
      (a, b) => (b.verdict.miss === 0 && (a === null || isBetter(b.verdict, a.verdict)) ? b : a),
      null,
    );
  }
  if (found === null && slopes !== null) {
    const half = freedoms.map(({ step, from, to }) => (to === from ? 0 : step / (to - from) / 2));
    // Near the answer a pool may tip over all at once, so it is left by as little as can be.
    for (const reach of [4, 12, 40].map((times) => times * Math.max(...half))) {
      const safe = bestStep({ base: best, slopes, binding, reach }, withSlack(half));
      const [rounded] = yield* ask(problem, [
        nearest(
          freedoms,
          best.at.map((x, i) => x + (safe[i] as number)),
        ),
      ]);
      if (found === null && rounded?.verdict.miss === 0) found = rounded;
    }
  }
  // Nothing near passes in whole steps: the answer stays as fine as it must be.
  if (found === null) return best;
  return yield* byStep(problem, found);
}

const steps = (freedoms: readonly Freedom[], at: readonly number[]) =>
  valuesOf(freedoms, at).map((value, i) => {
    const { step, from, to } = freedoms[i] as Freedom;
    const low = Math.max(Math.ceil(from / step - 1e-9), Math.floor(value / step + 1e-9)) * step;
    return [low, Math.min(Math.floor(to / step + 1e-9) * step, low + step)] as const;
  });

const nearest = (freedoms: readonly Freedom[], at: readonly number[]): readonly number[] => {
  const values = valuesOf(freedoms, at);
  const ends = steps(freedoms, at);
  return placesOf(
    freedoms,
    ends.map(([low, high], i) => ((values[i] as number) - low < high - (values[i] as number) ? low : high)),
  );
};

const roundings = (best: Trial, slopes: Slopes | null, freedoms: readonly Freedom[]) => {
  const ends = steps(freedoms, best.at);
  const count = Math.min(MOST_CORNERS, power(2, freedoms.length));
  const corners = Array.from({ length: count }, (_, k) =>
    placesOf(
      freedoms,
      ends.map((pair, i) => pair[(k >> i) & 1] as number),
    ),
  );
  if (slopes === null) return corners;
  return corners
    .map((at) => ({ at, ...foretold(best, slopes, at) }))
    .sort((a, b) => a.miss - b.miss || a.cost - b.cost)
    .map(({ at }) => at);
};

/** What the straight-line models say of a place. */
const foretold = (best: Trial, slopes: Slopes, at: readonly number[]) => {
  const step = at.map((x, i) => x - (best.at[i] as number));
  const miss = best.verdict.rows.reduce((all, { id, margin }) => {
    const slope = slopes.rows.get(id);
    // Half a thousandth of a margin is within what the models can tell.
    return slope === undefined || margin < 0
      ? all
      : all + Math.max(0, -5e-4 - margin - alongStep(slope, step));
  }, 0);
  return { miss, cost: alongStep(slopes.cost, step) };
};

function* byStep(problem: SizeProblem, start: Trial): Search<Trial> {
  const { freedoms } = problem;
  let best = start;
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const values = valuesOf(freedoms, best.at);
    const beside = stepsBeside(freedoms.length).flatMap((move) => {
      const next = values.map((value, i) => value + (move[i] as number) * (freedoms[i] as Freedom).step);
      return next.every((value, i) => within(freedoms[i] as Freedom, value))
        ? [placesOf(freedoms, next)]
        : [];
    });
    const found = (yield* ask(problem, beside)).reduce(
      (a, b) => (isBetter(b.verdict, a.verdict) ? b : a),
      best,
    );
    if (found === best) return best;
    best = found;
  }
  return best;
}

const within = ({ from, to }: Freedom, value: number): boolean => value >= from - 1e-9 && value <= to + 1e-9;

/** Moves by whole steps: with one or two values all of up to two steps, along a limit too; with more one by one. */
const stepsBeside = (free: number): readonly (readonly number[])[] => {
  if (free === 1) return [[-2], [-1], [1], [2]];
  if (free === 2) {
    const few = [-2, -1, 0, 1, 2];
    return few.flatMap((a) => few.map((b) => [a, b])).filter(([a, b]) => a !== 0 || b !== 0);
  }
  return Array.from({ length: free }, (_, i) => i).flatMap((i) =>
    [-1, 1].map((d) => Array.from({ length: free }, (_, k) => (k === i ? d : 0))),
  );
};

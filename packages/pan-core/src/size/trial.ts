import type { SizeProblem } from './problem.js';
import type { SizeRequest } from './request.js';
import type { Question, Verdict } from './verdict.js';

/** Places asked about at once; the answers come back in the same order, from however many hands. */
export interface Batch {
  readonly request: SizeRequest;
  readonly questions: readonly Question[];
}

/**
 * A search that asks for verdicts batch by batch. Whoever drives it may answer on one thread or on many, show
 * progress, or stop: its course depends on nothing but the verdicts.
 */
export type Search<T> = Generator<Batch, T, readonly Verdict[]>;

/** A place, each coordinate 0 to 1, and what became of the design there. */
export interface Trial {
  readonly at: readonly number[];
  readonly verdict: Verdict;
}

/** Passing before missing, then by cost or by miss; the first of two equals stays. */
export const isBetter = (a: Verdict, b: Verdict): boolean => {
  if (a.miss === 0 && b.miss === 0) return a.cost < b.cost;
  return a.miss < b.miss;
};

export const bestOf = (trials: readonly Trial[]): Trial => {
  if (trials.length === 0) throw new Error('no trial to choose from');
  return trials.reduce((a, b) => (isBetter(b.verdict, a.verdict) ? b : a));
};

/** Asks all about some places and pairs them with their answers. */
export const ask = (problem: SizeProblem, places: readonly (readonly number[])[]): Search<readonly Trial[]> =>
  askUntil(
    problem,
    places.map((at) => ({ at, enough: Number.POSITIVE_INFINITY })),
  );

/** The same, each only until its miss is enough. */
export function* askUntil(
  { request }: SizeProblem,
  questions: readonly Question[],
): Search<readonly Trial[]> {
  if (questions.length === 0) return [];
  const verdicts = yield { request, questions };
  return questions.map(({ at }, i) => ({ at, verdict: verdicts[i] as Verdict }));
}

/** Runs a search on this thread. */
export const runSearch = <T>(search: Search<T>, answer: (batch: Batch) => readonly Verdict[]): T => {
  let step = search.next();
  while (step.done !== true) step = search.next(answer(step.value));
  return step.value;
};

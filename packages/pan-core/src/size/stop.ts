import type { Batch, Search, Trial } from './trial.js';
import type { Verdict } from './verdict.js';

/** A search whose questions may come back without an answer, null, once it is to stop: it ends with what it has. */
export type StoppableSearch<T> = Generator<Batch, T, readonly (Verdict | null)[]>;

/**
 * Runs a search for as long as it is answered; null once it is not.
 *
 * @param see told every answer, for whoever keeps the best so far
 */
export function* untilStopped<T>(
  search: Search<T>,
  see: (trials: readonly Trial[]) => void,
): StoppableSearch<T | null> {
  let step = search.next();
  while (step.done !== true) {
    const { questions } = step.value;
    const answers = yield step.value;
    const trials = questions.flatMap(({ at }, i) => {
      const verdict = answers[i] ?? null;
      return verdict === null ? [] : [{ at, verdict }];
    });
    see(trials);
    if (trials.length < questions.length) return null;
    step = search.next(trials.map(({ verdict }) => verdict));
  }
  return step.value;
}

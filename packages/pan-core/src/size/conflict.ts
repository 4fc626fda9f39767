import { smallestHittingSet } from './hitting-set.js';
import type { SizeProblem } from './problem.js';
import type { SizeRequest } from './request.js';
import { bestDesign, usualEffort } from './search.js';
import type { Search, Trial } from './trial.js';

/** Rounds before giving up; each rules out at least one set of checks. */
const MOST_ROUNDS = 24;

/** How a request becomes a problem; the searches below change requests, never problems. */
export type Pose = (request: SizeRequest) => SizeProblem;

/**
 * A smallest set of checks that no design in the ranges passes together. Every design seen misses something, so
 * such a set must share a check with what each of them misses; a smallest one that does is put to the search
 * alone, and either nothing passes it or a new design does and is added (implicit hitting sets: Chandrasekaran,
 * Karp, Moreno-Centeno and Vempala, 2011). As sure as the search is that nothing passes.
 */
export function* conflictIn(
  pose: Pose,
  request: SizeRequest,
  seen: readonly Trial[],
): Search<readonly string[]> {
  const trials = [...seen];
  let set: readonly string[] = [];
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const sets = trials.filter(({ verdict }) => verdict.whole).map((trial) => missedBy(trial, request));
    const smallest = smallestHittingSet(sets);
    if (smallest === null) return set;
    set = smallest;
    const problem = pose({ ...request, only: set });
    // As wide as the search itself: one that looks less widely may miss a design that holds the set.
    const found = yield* bestDesign(problem, usualEffort(problem.freedoms.length));
    if (found.best.verdict.miss > 0 || !found.best.verdict.whole) return set;
    trials.push(found.best);
  }
  return set;
}

/** What a design misses of all that counts, whichever of it was being asked for. */
const missedBy = ({ verdict }: Trial, { hold, only }: SizeRequest): ReadonlySet<string> =>
  new Set(
    verdict.rows
      .filter(({ status, id }) => status === 'fail' || (status === 'warn' && hold.includes(id)))
      .filter(({ id }) => only === null || only.includes(id))
      .map(({ id }) => id),
  );

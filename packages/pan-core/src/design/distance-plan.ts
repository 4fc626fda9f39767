import { type DistanceProposal, proposeDistances } from '../geometry/index.js';
import type { RoughHoles } from './rail-survey.js';

/** A slip in each distance shows in its own residual by at least this share. */
export const LEAST_REDUNDANCY = 0.2;
const PER_HOLE = 3;
const MOST_PER_HOLE = 5;

/**
 * Which distances to measure between holes known roughly: three for each hole, more where a slip could hide in
 * one of those. null when no set of distances within reach holds every hole.
 */
export const distancePlan = ({ at, placed, reach }: RoughHoles): DistanceProposal | null => {
  const n = at.length;
  const every = (n * (n - 1)) / 2;
  let best: DistanceProposal | null = null;
  for (let perHole = PER_HOLE; perHole <= MOST_PER_HOLE; perHole += 0.5) {
    const count = Math.min(every, Math.max(2 * n - 3, Math.ceil(perHole * n)));
    const proposal = proposeDistances(at, placed, count, reach ?? Number.POSITIVE_INFINITY);
    if (proposal !== null && (best === null || proposal.least > best.least)) best = proposal;
    if (best !== null && best.least >= LEAST_REDUNDANCY) break;
  }
  return best;
};

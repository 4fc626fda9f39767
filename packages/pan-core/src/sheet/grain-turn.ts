import type { Part } from './part.js';

/** Quarter turns that keep folds across the rolling direction, so that sheet does not crack along its grain. */
export const allowedTurns = (part: Pick<Part, 'folds'>): readonly number[] => {
  if (part.folds.length === 0) return [0, 1, 2, 3];
  let [along, across] = [0, 0];
  for (const { from, to } of part.folds) {
    along += Math.abs(to[0] - from[0]);
    across += Math.abs(to[1] - from[1]);
  }
  // Folds that run along the drawing's x need a quarter turn to stand across the sheet's length.
  return across >= along ? [0, 2] : [1, 3];
};

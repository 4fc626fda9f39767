import type { Batch, SizeProblem, Verdict } from 'pan-core';
import type { Screen } from '../commands/command.js';
import { fine } from './size-figure.js';

/** What a sizing has come to, in words that fit a line, from its answers one batch after another. */
export const sizeCourse = (
  { request, goal }: SizeProblem,
  screen: Pick<Screen, 'units' | 'width'>,
): ((batch: Batch, verdicts: readonly Verdict[]) => string) => {
  let tried = 0;
  let best: number | null = null;
  return (batch, verdicts) => {
    tried += verdicts.length;
    const own = batch.request === request;
    if (own) {
      for (const { miss, whole, cost } of verdicts)
        if (whole && miss === 0 && (best === null || cost < best)) best = cost;
    }
    const figure = best === null ? 0 : best * goal.scale * (goal.sense === 'least' ? 1 : -1);
    const found =
      best === null
        ? 'none passes so far'
        : goal.name === 'least change'
          ? 'one passes already'
          : `best so far ${fine(figure, goal.unit, screen)}`;
    const now = own ? found : best === null ? 'looking at what would have to give' : 'looking further';
    return `${tried} designs tried; ${now}; Ctrl-C stops. `.slice(0, screen.width);
  };
};

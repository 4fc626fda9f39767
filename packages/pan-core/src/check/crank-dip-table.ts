import { crankDips, type OilSystem } from '../oil/index.js';
import type { MouthCase } from './mouth-case.js';
import type { CrankDipRow } from './report.js';

/** Held and settled of a manoeuvre at the fullest of its fills: the most oil is the worst for the crank. */
export const fullest = (fills: readonly MouthCase[]): MouthCase =>
  fills.reduce((a, b) => (b.volume > a.volume ? b : a));

/**
 * Every throw in every manoeuvre, the deeper of held and settled.
 *
 * @param fills each manoeuvre at every running fill
 */
export const crankDipTable = (
  { model }: OilSystem,
  fills: readonly (readonly MouthCase[])[],
): readonly CrankDipRow[] =>
  fills.map(fullest).flatMap(({ manoeuvre, held, settled }) => {
    const after = crankDips(model, settled);
    return crankDips(model, held).map(({ throw: n, x, depth }, i): CrankDipRow => {
      const late = after[i]?.depth ?? null;
      const settles = late !== null && (depth === null || late > depth);
      const deeper = settles ? late : depth;
      return {
        case: manoeuvre.name,
        throw: n,
        x_mm: x,
        depth_mm: deeper,
        state: deeper === null ? null : settles ? 'settled' : 'held',
      };
    });
  });

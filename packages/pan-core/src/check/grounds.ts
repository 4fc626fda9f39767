import type { Assumption } from '../design/index.js';
import table from './grounds.json' with { type: 'json' };

/** What a number leans on besides the file's own measurements. */
export interface Grounds {
  /** Keys whose value was assumed and that the number depends on. */
  readonly assumed: readonly string[];
  /** What the model behind it leaves out, in a few words; null for plain geometry. */
  readonly model: string | null;
}

const MODELS: Readonly<Record<string, string>> = table.models;
/** Numbers about oil depend on the room it lies in. */
const OF_OIL =
  /^(running_level|stopped_level|never_returns|undrained|trapped_air|dipstick_|mouth_(held|settled)|draw_|swing_|rods_|rear_|under_oil_)/;

/** What a check's value leans on; a check that no row of the table names rests on geometry alone. */
export const groundsOf = (id: string, assumed: readonly Assumption[]): Grounds => {
  const row = table.rows.find(({ checks }) => id.startsWith(checks));
  if (row === undefined) return { assumed: [], model: null };
  const rests = OF_OIL.test(id) ? [...row.rests, ...table.shapes] : row.rests;
  return {
    assumed: [
      ...new Set(
        assumed
          .map(({ path }) => path.join('.'))
          .filter((key) => rests.some((rest) => key === rest || key.startsWith(`${rest}.`))),
      ),
    ],
    model: row.model === null ? null : (MODELS[row.model] ?? null),
  };
};

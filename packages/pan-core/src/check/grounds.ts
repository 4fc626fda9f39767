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
/** What a check's value or a screen's number leans on; one that no row of the table names rests on geometry alone. */
export const groundsOf = (id: string, assumed: readonly Assumption[]): Grounds => {
  const row = table.rows.find(({ numbers }) => id.startsWith(numbers));
  if (row === undefined) return { assumed: [], model: null };
  // Numbers about oil depend on the room it lies in.
  const rests = row.room ? [...row.rests, ...table.shapes] : row.rests;
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

/** Grounds of several numbers, by name. */
export const groundsBy = (
  ids: readonly string[],
  assumed: readonly Assumption[],
): Readonly<Record<string, Grounds>> => Object.fromEntries(ids.map((id) => [id, groundsOf(id, assumed)]));

/** Which oil the pan holds: that of a standing or a running engine, or an amount that was typed in. */
export type FillKind = 'stopped' | 'running' | 'typed';

const LOOSE: Readonly<Record<FillKind, readonly string[]>> = {
  stopped: ['oil.held_up'],
  running: ['oil.galleries'],
  typed: ['oil.filter', 'oil.held_up', 'oil.galleries'],
};

/** Assumptions without those that say nothing about this amount of oil. */
export const assumedFor = (fill: FillKind, assumed: readonly Assumption[]): readonly Assumption[] =>
  assumed.filter(({ path }) => !LOOSE[fill].includes(path.join('.')));

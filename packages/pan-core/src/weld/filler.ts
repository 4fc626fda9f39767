import { freeze } from '../numeric/index.js';
import table from './fillers.json' with { type: 'json' };

/** Rod or wire for a sheet, why, and who says so. */
export interface Filler {
  readonly filler: string;
  readonly why: string;
  readonly source: string;
  readonly flag: 'seen' | 'memory';
}

/** Null for a material the table does not hold: ask the seller of the sheet. */
export const fillerFor = (material: string): Filler | null => {
  const row = table.rows.find((r) => r.material === material);
  if (row === undefined) return null;
  const { filler, why, source, flag } = row;
  return freeze({ filler, why, source, flag: flag === 'seen' ? 'seen' : 'memory' });
};

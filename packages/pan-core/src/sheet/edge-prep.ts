import { findMaterial } from '../design/index.js';
import { freeze } from '../numeric/index.js';
import table from './edge-prep.json' with { type: 'json' };

/** Kinds of joint that are prepared alike. */
export type PreparedJoint =
  | 'butt'
  | 'butt of plates'
  | 'edge run'
  | 'open corner'
  | 'fillet'
  | 'tee'
  | 'ring';

/** How the edges of a joint are made ready, by process, and who says so. */
export interface EdgePrep {
  /** Opening at the root, mm; null where the pattern's own clearance leaves it. */
  readonly gap: number | null;
  readonly TIG: string;
  readonly MIG: string;
  readonly source: string;
}

/**
 * Root gap and edges for a joint of metal so thick. A material that is not in the materials table is prepared
 * as steel is, which bevels sooner.
 *
 * @param thickness of the thinner sheet, mm
 */
export const edgePrep = (joint: PreparedJoint, thickness: number, material: string): EdgePrep => {
  const metal = findMaterial(material)?.metal ?? 'steel';
  const rows = table.rows.filter((row) => row.joint === joint && row.metals.includes(metal));
  const row = rows.find(({ to_mm }) => thickness <= to_mm + 1e-9) ?? rows[rows.length - 1]!;
  return freeze({ gap: row.gap_mm, TIG: row.TIG, MIG: row.MIG, source: row.source });
};

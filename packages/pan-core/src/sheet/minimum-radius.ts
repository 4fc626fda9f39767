import data from './bend-data.json' with { type: 'json' };
import { bendRows } from './bend-rule.js';

const INCH = 25.4;

/**
 * Smallest inside bend radius for a material and thickness, mm: straight between rows of the inch table, the
 * first row's radius below it, the last row's ratio to thickness beyond it. null when the table does not
 * have the material.
 */
export const minimumRadius = (material: string, thickness: number): number | null => {
  const key = bendRows(material)?.minimum_radius;
  const table = data.minimum_inside_radius_in;
  const radii: readonly (number | null)[] | undefined = Object.entries(table.rows).find(
    ([k]) => k === key,
  )?.[1];
  if (radii === undefined) return null;
  const rows = table.thickness
    .map((t, i) => ({ t: t * INCH, r: radii[i] == null ? null : radii[i] * INCH }))
    .filter((row): row is { t: number; r: number } => row.r !== null);
  const [first, last] = [rows[0]!, rows[rows.length - 1]!];
  if (thickness <= first.t) return first.r;
  if (thickness >= last.t) return (last.r * thickness) / last.t;
  const next = rows.findIndex((row) => row.t >= thickness);
  const [a, b] = [rows[next - 1]!, rows[next]!];
  return a.r + ((b.r - a.r) * (thickness - a.t)) / (b.t - a.t);
};

import table from './materials.json' with { type: 'json' };

/** The family a material belongs to. */
export type Metal = 'aluminium' | 'steel' | 'stainless';

/** A row of the materials table. */
export interface Material {
  readonly key: string;
  readonly metal: Metal;
  /** kg/mm³ */
  readonly density: number;
  /** Tensile strength, N/mm², from memory; for a brake's force only. */
  readonly tensile: number;
  readonly source: string;
  /** [thickness, smallest inside bend radius], mm, thickness rising. */
  readonly minimumRadius: readonly (readonly [number, number])[];
}

const INCH = 25.4;

const radiusRows: Readonly<Record<string, readonly number[]>> = table.minimumRadius.rows;

/** Every material of the table, with density, bend data and their sources. */
export const materials: readonly Material[] = Object.freeze(
  table.rows.map((row) =>
    Object.freeze({
      key: row.key,
      metal: row.metal as Metal,
      density: row.density_g_cm3 * 1e-6,
      tensile: row.tensile_MPa,
      source: row.source,
      minimumRadius: Object.freeze(
        (radiusRows[row.minimum_radius] ?? []).map(
          (radius, i) => [(table.minimumRadius.thickness_in[i] as number) * INCH, radius * INCH] as const,
        ),
      ),
    }),
  ),
);

export const materialNames: readonly string[] = Object.freeze(materials.map(({ key }) => key));

/** The material of a key; null where the table has none. */
export const findMaterial = (key: string): Material | null => materials.find((m) => m.key === key) ?? null;

/**
 * Smallest inside bend radius, mm: the row of the next thickness up; past the table's last row in
 * proportion to thickness.
 */
export const smallestBendRadius = (material: Material, thickness: number): number => {
  const row = material.minimumRadius.find(([t]) => t >= thickness);
  if (row !== undefined) return row[1];
  const [t, radius] = material.minimumRadius.at(-1) as readonly [number, number];
  return (radius / t) * thickness;
};

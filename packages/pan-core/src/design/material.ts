import table from './materials.json' with { type: 'json' };

export type Metal = 'aluminium' | 'steel' | 'stainless';

/** A row of the materials table. */
export interface Material {
  readonly key: string;
  readonly metal: Metal;
  /** kg/mm³ */
  readonly density: number;
  readonly source: string;
}

export const materials: readonly Material[] = table.rows.map((row) => ({
  key: row.key,
  metal: row.metal as Metal,
  density: row.density_g_cm3 * 1e-6,
  source: row.source,
}));

export const findMaterial = (key: string): Material | null => materials.find((m) => m.key === key) ?? null;

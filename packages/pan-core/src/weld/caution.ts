import { findMaterial } from '../design/index.js';
import { freeze } from '../numeric/index.js';
import table from './cautions.json' with { type: 'json' };

/** A warning with where it applies and who says so. */
export interface Caution {
  readonly id: string;
  readonly text: string;
  readonly source: string;
  /** Whether the source itself was seen, or the fact comes from memory. */
  readonly flag: 'seen' | 'memory';
}

interface Row extends Caution {
  /** Metals it is for, and single materials besides. */
  readonly metals: readonly string[];
  readonly materials: readonly string[];
  readonly at: readonly string[];
}

/**
 * The cautions for welding or cutting a material, in the table's order. A material that is not in the
 * materials table gets every one.
 */
export const cautionsFor = (material: string, at: 'weld' | 'cut'): readonly Caution[] => {
  const metal = findMaterial(material)?.metal ?? null;
  return freeze(
    (table.rows as readonly Row[])
      .filter((row) => row.at.includes(at))
      .filter((row) => metal === null || row.metals.includes(metal) || row.materials.includes(material))
      .map(({ id, text, source, flag }) => ({ id, text, source, flag })),
  );
};

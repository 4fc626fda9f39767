import { findMaterial } from '../design/index.js';
import { freeze } from '../numeric/index.js';
import table from './cleaning.json' with { type: 'json' };

/** What must be clean before welding, of what, and how that is done. */
export interface Cleaning {
  readonly what: string;
  readonly of: string;
  readonly how: string;
  readonly source: string;
}

/** Every row for an unknown material. */
export const cleaningFor = (material: string): readonly Cleaning[] => {
  const metal = findMaterial(material)?.metal ?? null;
  return freeze(
    table.rows
      .filter((row) => metal === null || row.metals.includes(metal))
      .map(({ what, of, how, source }) => ({ what, of, how, source })),
  );
};

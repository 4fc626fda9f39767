import { findMaterial } from '../design/index.js';
import table from './process-number.json' with { type: 'json' };

/** Numbers of the processes that a material may be welded by, for a symbol's tail: ISO 4063, from memory; null for a material without a row. */
export const processNumbers = (material: string): { readonly TIG: string; readonly MIG: string } | null =>
  table.rows.find(({ metal }) => metal === findMaterial(material)?.metal) ?? null;

import type { Shop } from '../../design/index.js';

/** A sheet to lay parts out on, mm; its length is the direction it was rolled in. */
export interface SheetSize {
  readonly length: number;
  readonly width: number;
  /** Bare rim on all sides. */
  readonly edge: number;
  /** Metal left between two cuts. */
  readonly gap: number;
}

/** Narrower than this a web between two cuts burns or bends, mm; common practice, no source. */
const LEAST_GAP = 5;

/** The shop's sheet for parts of one thickness: between cuts never less metal than the sheet is thick. */
export const sheetSize = ({ sheet, edge, gap }: Shop, thickness: number): SheetSize => ({
  length: sheet[0],
  width: sheet[1],
  edge,
  gap: gap ?? Math.max(LEAST_GAP, thickness),
});

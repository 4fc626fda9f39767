import type { Vec2 } from '../../numeric/index.js';
import type { FitTable } from './nest-fit.js';
import { type Barrier, leftmostPlace } from './nest-place.js';
import type { NestShape } from './nest-shape.js';

/** A thing to lay: a part's shapes, one for each turn allowed, by number. */
export interface NestPiece {
  readonly part: number;
  readonly shapes: readonly NestShape[];
}

export interface LaidPiece {
  readonly piece: NestPiece;
  readonly shape: NestShape;
  /** Lower left corner of the shape's box in the sheet's room, units. */
  readonly at: Vec2;
}

/** Pieces on one sheet and how far they reach along and across it, units. */
export interface LaidSheet {
  readonly laid: readonly LaidPiece[];
  readonly reach: Vec2;
}

/**
 * Bottom-left placing: pieces in the order given, each turned so that it ends furthest left, at its leftmost
 * free place and there at the lowest.
 *
 * @param room length and width that the shapes may fill, units
 * @param tooFar whether a layout that reaches so far is of no use: the rest is then left over
 * @returns the sheet and the pieces that found no place on it, in order
 */
export const layPieces = (
  pieces: readonly NestPiece[],
  room: Vec2,
  fits: FitTable,
  tooFar: (reach: Vec2) => boolean = () => false,
): { readonly sheet: LaidSheet; readonly over: readonly NestPiece[] } => {
  const laid: LaidPiece[] = [];
  const over: NestPiece[] = [];
  let reach: Vec2 = [0, 0];
  for (const [i, piece] of pieces.entries()) {
    let best: { shape: NestShape; at: Vec2; end: number } | null = null;
    for (const shape of piece.shapes) {
      const free: Vec2 = [room[0] - shape.size[0], room[1] - shape.size[1]];
      const barriers = laid.map((other): Barrier => ({ fit: fits(other.shape, shape), at: other.at }));
      const limit = best === null ? undefined : best.end - shape.size[0];
      const at = leftmostPlace(barriers, free, limit);
      if (at === null) continue;
      const end = at[0] + shape.size[0];
      if (best === null || end < best.end) best = { shape, at, end };
    }
    if (best === null) {
      over.push(piece);
      continue;
    }
    laid.push({ piece, shape: best.shape, at: best.at });
    reach = [Math.max(reach[0], best.end), Math.max(reach[1], best.at[1] + best.shape.size[1])];
    if (tooFar(reach)) return { sheet: { laid, reach }, over: [...over, ...pieces.slice(i + 1), piece] };
  }
  return { sheet: { laid, reach }, over };
};

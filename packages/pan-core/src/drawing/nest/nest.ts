import { power, type Vec2 } from '../../numeric/index.js';
import { allowedTurns, type Part } from '../../sheet/index.js';
import { fitTable } from './nest-fit.js';
import type { LaidSheet, NestPiece } from './nest-lay.js';
import { searchLayout } from './nest-search.js';
import { boxShapes, type NestShape, nestShapes, sameShape, UNITS } from './nest-shape.js';
import type { SheetSize } from './sheet-size.js';

/** A part's place on a sheet: turned about the drawing's origin, radians, then shifted, mm from the corner. */
export interface NestPlace {
  readonly part: number;
  readonly turn: number;
  readonly shift: Vec2;
}

/** One sheet of a nest; `used` is the corner that two straight cuts take off it, rim included, mm. */
export interface NestSheet {
  readonly places: readonly NestPlace[];
  readonly used: Vec2;
}

export interface Nest {
  readonly sheets: readonly NestSheet[];
  /** Numbers of parts that no sheet of this size holds the right way round. */
  readonly tooLarge: readonly number[];
  /** Sheet used by this layout, and by laying out each part's box, mm². */
  readonly usedArea: number;
  readonly boxArea: number;
}

/** Changed orders tried after the sorted ones: fewer where each takes longer. */
const changesFor = (pieces: number): number => Math.min(500, Math.round(6000 / power(pieces, 1.5)));

/**
 * Lays parts of one material and thickness on sheets by their true shape, gap kept, folds across the rolling
 * direction. For comparison each part's upright box is laid by the same bottom-left placing in the same sorted
 * orders on strips of the same widths; the best layout found either way is taken.
 */
export const nestParts = async (parts: readonly Part[], sheet: SheetSize): Promise<Nest> => {
  const clipper = await import('clipper2-ts');
  const { gap } = sheet;
  const margin = gap / 2;
  const room: Vec2 = [
    Math.floor((sheet.length - 2 * sheet.edge + 2 * margin) * UNITS),
    Math.floor((sheet.width - 2 * sheet.edge + 2 * margin) * UNITS),
  ];
  const fitsRoom = (shape: NestShape): boolean => shape.size[0] <= room[0] && shape.size[1] <= room[1];
  const shapes = parts.map((part) =>
    distinct(nestShapes(part, allowedTurns(part), gap, clipper)).filter(fitsRoom),
  );
  const boxes = parts.map((part) => boxShapes(part, allowedTurns(part), gap).filter(fitsRoom));
  const tooLarge = parts.flatMap((_, i) => (shapes[i]!.length === 0 ? [i] : []));
  const usedOf = (reach: Vec2): Vec2 => [
    Math.min(sheet.length, 2 * sheet.edge - 2 * margin + reach[0] / UNITS),
    Math.min(sheet.width, 2 * sheet.edge - 2 * margin + reach[1] / UNITS),
  ];
  const used = (reach: Vec2): number => usedOf(reach)[0] * usedOf(reach)[1];
  const run = (
    all: readonly (readonly NestShape[])[],
    changes: (pieces: number) => number,
  ): readonly LaidSheet[] => searchLayout(piecesOf(parts, all), { room, changes, used }, fitTable(clipper));
  const total = (sheets: readonly LaidSheet[]): number =>
    sheets.reduce((sum, { reach }) => sum + used(reach), 0);
  // Boxes are quick to lay, and of a few plain parts a better order of boxes can beat the shapes.
  const byBox = run(boxes, () => 0);
  const tried = [run(shapes, changesFor), run(boxes, changesFor), byBox];
  const best = tried.reduce((a, b) => (total(b) < total(a) ? b : a));
  const corner = sheet.edge - margin;
  return {
    sheets: best.map(({ laid, reach }) => ({
      used: usedOf(reach),
      places: laid.map(({ piece, shape, at }) => ({
        part: piece.part,
        turn: (shape.turn * Math.PI) / 2,
        shift: [corner + at[0] / UNITS + shape.shift[0], corner + at[1] / UNITS + shape.shift[1]],
      })),
    })),
    tooLarge,
    usedArea: total(best),
    boxArea: total(byBox),
  };
};

const distinct = (shapes: readonly NestShape[]): readonly NestShape[] =>
  shapes.filter((shape, i) => shapes.findIndex((other) => sameShape(other, shape)) === i);

const piecesOf = (parts: readonly Part[], shapes: readonly (readonly NestShape[])[]): readonly NestPiece[] =>
  parts.flatMap((part, i): NestPiece[] => {
    const own = shapes[i]!;
    if (own.length === 0) return [];
    return Array.from({ length: part.quantity }, () => ({ part: i, shapes: own }));
  });

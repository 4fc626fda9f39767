import { isClosed, type Path, pathBox } from '../../geometry/index.js';
import type { Vec2 } from '../../numeric/index.js';
import type { Part } from '../../sheet/index.js';
import { oneLine, wrapLine } from '../one-line.js';
import { foldWords, partWords, shortFoldWords } from '../part-words.js';
import { requireCuttable } from './cut-check.js';
import { circleEntity, type Entity, lineEntity, pathEntity, textEntity } from './dxf-entity.js';
import { dxfFile } from './dxf-file.js';
import { CHARACTER, labelAlong, markLabel } from './dxf-label.js';

/** Side of the square that proves a print or an import true to size, mm. */
export const CHECK_SQUARE = 100;
const CLEAR = 20;

/** What every drawing of a set says besides its part. */
export interface SheetWords {
  readonly title: string;
  /** That the design is not ready to cut, or null. */
  readonly warning: string | null;
  readonly sentences: readonly string[];
}

/**
 * A part as a shop gets it: cut loops, fold lines from edge to edge with their words, marks, a check
 * square clear of the part and every sentence on the note layer, a warning first and larger.
 *
 * @throws PanError `sheet-cut` when a cut does not close.
 */
export const partDxf = (part: Part, { title, warning, sentences }: SheetWords): string => {
  const box = pathBox(part.outline);
  const height = Math.min(7, Math.max(2.5, Math.max(...part.flat) / 120));
  const foot = box.min[1] - CLEAR;
  const left = box.min[0] + CHECK_SQUARE + CLEAR;
  const across = Math.max(box.max[0] - left, 70 * height * CHARACTER);
  const column = textColumn([left, foot], across, [
    ...(warning === null ? [] : [{ text: warning, height: 1.5 * height }]),
    ...[oneLine(title, 100), ...partWords(part), ...part.notes, ...sentences].map((text) => ({
      text,
      height,
    })),
  ]);
  const entities = [
    ...cutLoops(part),
    ...part.folds.flatMap((fold) => [
      lineEntity('fold', fold.from, fold.to),
      labelAlong(fold.from, fold.to, height, foldWords(fold), shortFoldWords(fold)),
    ]),
    ...part.marks.flatMap((mark) => [
      pathEntity('mark', mark.path, isClosed(mark.path)),
      ...(mark.what === '' ? [] : [markLabel(mark, 0.7 * height)]),
    ]),
    checkSquare([box.min[0], foot - CHECK_SQUARE]),
    textEntity('note', [box.min[0] + 5, foot - CHECK_SQUARE + 5], 4, `${CHECK_SQUARE} mm check square`),
    ...column.entities,
  ];
  return dxfFile(entities, {
    min: [box.min[0], Math.min(foot - CHECK_SQUARE, column.foot) - height],
    max: [Math.max(box.max[0], left + across), box.max[1]],
  });
};

/**
 * The cut loops alone, for a machine that takes every line for a cut. The words go in as comments, which
 * no machine draws.
 */
export const barePartDxf = (part: Part, { title, warning, sentences }: SheetWords): string =>
  dxfFile(cutLoops(part), pathBox(part.outline), [
    ...(warning === null ? [] : [warning]),
    oneLine(title, 100),
    ...partWords(part),
    ...sentences,
  ]);

/** Lines of words downwards from a corner, wrapped to a width by the plain stroke font. */
export const textColumn = (
  [left, top]: Vec2,
  across: number,
  rows: readonly { readonly text: string; readonly height: number }[],
): { readonly entities: readonly Entity[]; readonly foot: number } => {
  const entities: Entity[] = [];
  let foot = top;
  for (const [i, { text, height }] of rows.entries()) {
    for (const line of wrapLine(oneLine(text, 1000), Math.floor(across / (height * CHARACTER)))) {
      foot -= 1.6 * height;
      entities.push(textEntity('note', [left, foot], height, line));
    }
    // Large letters reach lower than the small ones after them allow for.
    if (height > (rows[i + 1]?.height ?? height)) foot -= 0.6 * height;
  }
  return { entities, foot };
};

export const cutLoops = (part: Part): readonly Entity[] => {
  requireCuttable(part);
  return [
    ...part.holes.map((hole) => circleEntity('through', hole.at, hole.diameter / 2)),
    ...part.openings.map((opening) => pathEntity('through', opening, true)),
    pathEntity('through', part.outline, true),
  ];
};

export const checkSquare = ([x, y]: Vec2): Entity => {
  const corners: readonly Vec2[] = [
    [x, y],
    [x + CHECK_SQUARE, y],
    [x + CHECK_SQUARE, y + CHECK_SQUARE],
    [x, y + CHECK_SQUARE],
  ];
  const path: Path = corners.map((from, i) => ({ kind: 'line', from, to: corners[(i + 1) % 4] as Vec2 }));
  return pathEntity('mark', path, true);
};

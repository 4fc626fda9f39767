import { boxPath, line, type PageItem, stroke } from '../page/page.js';

/** Bare rim of a bench drawing, width of its column at the right, and the gap before that, mm. */
export const EDGE = 8;
export const COLUMN = 84;
export const GAP = 3;

/** The border of a bench drawing. */
export const sheetFrame = (width: number, height: number): readonly PageItem[] => [
  stroke('frame', boxPath({ min: [EDGE, EDGE], max: [width - EDGE, height - EDGE] })),
];

/** The line that parts the view from the column. */
export const columnLine = (width: number, height: number): PageItem => {
  const x = width - EDGE - COLUMN - GAP / 2;
  return line('frame', [x, EDGE], [x, height - EDGE]);
};

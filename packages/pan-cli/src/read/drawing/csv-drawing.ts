import type { Drawing, DrawnCurve } from 'pan-core';
import { circleCurve } from 'pan-core';
import { drawingRefusal } from './drawing-problem.js';

const MOST_ROWS = 20_000;
const NUMBER = /^[+-]?(\d+\.?\d*|\.\d+)([eE][+-]?\d{1,2})?$/;
const MM: Readonly<Record<string, number>> = { mm: 1, cm: 10, m: 1000, in: 25.4 };
const HEAD = 'Head the columns x, y for corners in order, or x, y, diameter for holes.';

/**
 * A table of points: with columns x and y the corners of an outline in order, with a diameter as well round holes.
 * Separated by semicolons, tabs or commas; a decimal comma is read where commas do not separate. A unit may stand
 * behind a column's name: x_mm, y (in).
 *
 * @throws PanError `file-read` with the line
 */
export const csvDrawing = (text: string): Drawing => {
  const lines = text
    .replace(/^\uFEFF/, '')
    .split(/\r\n|\n|\r/)
    .map((line, i) => ({ line: line.trim(), number: i + 1 }))
    .filter(({ line }) => line !== '' && !line.startsWith('#'));
  const head = lines[0];
  if (head === undefined) throw drawingRefusal('It is empty.', HEAD);
  if (lines.length > MOST_ROWS) throw drawingRefusal(`It has more than ${MOST_ROWS} lines.`, 'Thin it out.');
  const separator = [';', '\t', ','].find((one) => head.line.includes(one)) ?? ',';
  const names = head.line.split(separator).map((cell) => cell.trim().toLowerCase());
  const columns = ['x', 'y', 'diameter'].map((name) =>
    names.findIndex((cell) => new RegExp(`^"?${name}\\b|^"?${name}_`).test(cell)),
  );
  const [x = -1, y = -1, diameter = -1] = columns;
  if (x < 0 || y < 0) throw drawingRefusal('It has no columns x and y.', HEAD, head.number);
  const rows = lines.slice(1).map(({ line, number }) => {
    const cells = line.split(separator);
    return [x, y, diameter].map((column) => (column < 0 ? 0 : cellNumber(cells[column], separator, number)));
  });
  if (rows.length < (diameter < 0 ? 3 : 1))
    throw drawingRefusal(
      `It has ${rows.length} points.`,
      diameter < 0 ? 'An outline has three or more.' : HEAD,
    );
  return { unit: unitOf(names[x] ?? ''), curves: curvesOf(rows, diameter >= 0), passedOver: [], words: [] };
};

const cellNumber = (cell: string | undefined, separator: string, line: number): number => {
  const written = (cell ?? '').trim().replace(/^"|"$/g, '');
  const plain = separator === ',' ? written : written.replace(',', '.');
  if (NUMBER.test(plain)) return Number(plain);
  throw drawingRefusal(`"${written.slice(0, 30)}" is no number.`, 'Write numbers alone, such as 12.5.', line);
};

const unitOf = (name: string): number | null => MM[/[a-z]+(?=\)?"?$)/.exec(name.slice(1))?.[0] ?? ''] ?? null;

const curvesOf = (rows: readonly (readonly number[])[], round: boolean): readonly DrawnCurve[] => {
  const points = rows.map(([x = 0, y = 0]) => [x, y] as const);
  if (round)
    return points.map((at, i) => ({ curve: circleCurve(at, (rows[i]?.[2] ?? 0) / 2), layer: 'holes' }));
  return [{ curve: { kind: 'straight', points: [...points, points[0] ?? [0, 0]] }, layer: 'outline' }];
};

import type { Point2, Side } from '../design/index.js';
import { type PlaneTable, planeThrough, type SidedPlane } from '../geometry/index.js';

/** Half-width at x from [x, half-width] rows sorted by x: straight between rows, constant beyond them. */
export const halfWidthAt = (rows: readonly Point2[], x: number): number => {
  const first = rows[0] as Point2;
  const last = rows[rows.length - 1] as Point2;
  if (x <= first[0]) return first[1];
  if (x >= last[0]) return last[1];
  for (let i = 0; i + 1 < rows.length; i++) {
    const a = rows[i] as Point2;
    const b = rows[i + 1] as Point2;
    if (x === a[0]) return a[1];
    if (x < b[0]) return a[1] + ((b[1] - a[1]) * (x - a[0])) / (b[0] - a[0]);
  }
  return last[1];
};

/** +1 for left (y positive), −1 for right. */
export const sideSign = (side: Side): 1 | -1 => (side === 'left' ? 1 : -1);

/**
 * The wall's plane between two stations of one straight run, looking outward. It comes from the run's own
 * ends and not from the room's, so that pan and wing get the same plane digit for digit.
 */
export const wallPlane = (
  table: PlaneTable,
  rows: readonly Point2[],
  sign: 1 | -1,
  x0: number,
  x1: number,
): SidedPlane => {
  const middle = (x0 + x1) / 2;
  const next = rows.findIndex((row) => row[0] > middle);
  const a = rows[next - 1];
  const b = rows[next];
  if (a === undefined || b === undefined || a[1] === b[1]) {
    return planeThrough(table, [0, sign, 0], [0, sign * halfWidthAt(rows, middle), 0]);
  }
  return planeThrough(table, [a[1] - b[1], sign * (b[0] - a[0]), 0], [a[0], sign * a[1], 0]);
};

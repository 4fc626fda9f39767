import type { Point2, Side } from '../design/index.js';
import { PanError } from '../errors/index.js';
import { halfWidthAt } from '../pan/index.js';

/** A vertical fold of a side plate, at a station where the half-width changes its slope. */
export interface SideFold {
  readonly x: number;
  readonly angle: number;
  readonly oilInside: boolean;
  readonly allowance: number;
  /** Place of the middle of the bend zone along the blank, from the plate's rear end. */
  readonly at: number;
}

/** A stretch of x that maps to the blank by one straight rule: place = start + (x − x0)·stretch. */
export interface SideStretch {
  readonly x0: number;
  readonly x1: number;
  readonly start: number;
  readonly stretch: number;
  readonly bend: boolean;
}

/** A side plate's length laid flat, rear to front. */
export interface SideRun {
  readonly stretches: readonly SideStretch[];
  readonly folds: readonly SideFold[];
  readonly length: number;
}

/** Bends flatter than this are rounding, not folds, radians. */
const NO_FOLD = 1e-12;

/**
 * Develops the wall y = half-width(x) between two x: true length along each straight run, the bend allowance
 * in place of each corner between its tangent lines.
 *
 * @throws PanError `shape-fold` where two vertical folds need more length than lies between their stations.
 */
export const sideRun = (
  rows: readonly Point2[],
  side: Side,
  rear: number,
  front: number,
  sheet: { readonly thickness: number; readonly bendRadius: number },
  allowance: (angle: number) => number,
): SideRun => {
  const stations = [rear, ...rows.map((r) => r[0]).filter((x) => x > rear && x < front), front];
  const slopes = stations.slice(1).map((x1, i) => {
    const x0 = stations[i]!;
    return Math.atan2(halfWidthAt(rows, x1) - halfWidthAt(rows, x0), x1 - x0);
  });
  const corners = stations.map((x, i) => {
    const turn = i === 0 || i === stations.length - 1 ? 0 : slopes[i]! - slopes[i - 1]!;
    const oilInside = turn < 0;
    const rho = oilInside ? sheet.bendRadius : sheet.bendRadius + sheet.thickness;
    const angle = Math.abs(turn) > NO_FOLD ? Math.abs(turn) : 0;
    return { x, angle, oilInside, setback: Math.tan(angle / 2) * rho };
  });
  const stretches: SideStretch[] = [];
  const folds: SideFold[] = [];
  let at = 0;
  let from = rear;
  slopes.forEach((slope, i) => {
    const [near, far] = [corners[i]!, corners[i + 1]!];
    const to = far.x - far.setback * Math.cos(slope);
    if (to <= from) throw tooClose(side, near.x, far.x);
    const stretch = 1 / Math.cos(slope);
    stretches.push({ x0: from, x1: to, start: at, stretch, bend: false });
    at += (to - from) * stretch;
    from = to;
    if (far.angle === 0) return;
    const end = far.x + far.setback * Math.cos(slopes[i + 1]!);
    const length = allowance(far.angle);
    stretches.push({ x0: to, x1: end, start: at, stretch: length / (end - to), bend: true });
    folds.push({
      x: far.x,
      angle: far.angle,
      oilInside: far.oilInside,
      allowance: length,
      at: at + length / 2,
    });
    at += length;
    from = end;
  });
  return { stretches, folds, length: at };
};

const tooClose = (side: Side, a: number, b: number): PanError =>
  new PanError({
    code: 'shape-fold',
    path: ['pan', side],
    message: `The ${side} side's vertical folds at x = ${a} and x = ${b} overlap: no straight sheet is left between them.`,
    advice: 'Move the stations apart, make the turn smaller, or use a smaller bend radius.',
  });

import type { Oriented } from './body.js';
import type { Measure } from './level.js';

/** Numbers a triangle: heights in order, projected area, mean height, cubic's factor below and above the middle. */
const WIDE = 7;
const SHELVES = 256;

/**
 * The triangles that a rising level cuts. All of them stand on shelves by the height of their lowest corner,
 * so that gathering takes time in proportion to their number; a shelf joins when the level comes to it, and
 * triangles wholly below it leave for two running sums.
 */
export interface LevelFront {
  readonly rows: Float64Array;
  /** Rows by shelf. */
  readonly order: Int32Array;
  /** Where each shelf begins in that order; one more entry than shelves. */
  readonly first: Int32Array;
  readonly bottom: number;
  readonly step: number;
  /** Rows that may be cut, `count` of them. */
  readonly active: Int32Array;
  count: number;
  /** Shelves that have joined. */
  joined: number;
  /** Projected area and its moment about height 0 of the triangles that have left, mm² and mm³. */
  area: number;
  moment: number;
  /** Nearest corners under and over the level last measured, among the active, mm. */
  below: number;
  above: number;
}

const shelfAt = (z: number, bottom: number, step: number): number =>
  Math.max(0, Math.min(SHELVES - 1, Math.floor((z - bottom) / step)));

/** The cells' triangles on their shelves, none joined; `bottom` and `top` bound their heights. */
export const createFront = (
  o: Oriented,
  cells: ArrayLike<number>,
  bottom: number,
  top: number,
): LevelFront => {
  const { heights, weights, body } = o;
  const { triangles, firstTriangle } = body;
  const step = (top - bottom) / SHELVES;
  let most = 0;
  for (let k = 0; k < cells.length; k++) {
    const cell = cells[k] as number;
    most += (firstTriangle[cell + 1] as number) - (firstTriangle[cell] as number);
  }
  const rows = new Float64Array(WIDE * most);
  const shelf = new Uint16Array(most);
  const first = new Int32Array(SHELVES + 1);
  let count = 0;
  for (let k = 0; k < cells.length; k++) {
    const cell = cells[k] as number;
    const end = firstTriangle[cell + 1] as number;
    for (let t = firstTriangle[cell] as number; t < end; t++) {
      const w = weights[t] as number;
      if (w === 0) continue;
      const a = heights[triangles[3 * t] as number] as number;
      const b = heights[triangles[3 * t + 1] as number] as number;
      const c = heights[triangles[3 * t + 2] as number] as number;
      const [ab, ba] = a < b ? [a, b] : [b, a];
      const z1 = Math.min(ab, c);
      const z2 = Math.max(ab, Math.min(ba, c));
      const z3 = Math.max(ba, c);
      const row = WIDE * count;
      rows[row] = z1;
      rows[row + 1] = z2;
      rows[row + 2] = z3;
      rows[row + 3] = w;
      rows[row + 4] = (a + b + c) / 3;
      rows[row + 5] = w / ((z2 - z1) * (z3 - z1));
      rows[row + 6] = w / ((z3 - z1) * (z3 - z2));
      const s = shelfAt(z1, bottom, step);
      shelf[count++] = s;
      first[s + 1] = (first[s + 1] as number) + 1;
    }
  }
  for (let s = 0; s < SHELVES; s++) first[s + 1] = (first[s + 1] as number) + (first[s] as number);
  const next = first.slice();
  const order = new Int32Array(count);
  for (let i = 0; i < count; i++) {
    const s = shelf[i] as number;
    const place = next[s] as number;
    order[place] = WIDE * i;
    next[s] = place + 1;
  }
  return {
    rows,
    order,
    first,
    bottom,
    step,
    active: new Int32Array(count),
    count: 0,
    joined: 0,
    area: 0,
    moment: 0,
    below: bottom,
    above: top,
  };
};

/** Whether a level stands where the front that was measured last says all there is to know. */
export const withinReach = ({ below, above, joined, bottom, step }: LevelFront, h: number): boolean =>
  h >= below && h <= above && shelfAt(h, bottom, step) < joined;

/** Triangles wholly under h leave for the sums: no lower level will be asked for. */
export const leaveBelow = (front: LevelFront, h: number): void => {
  const { rows, active } = front;
  let kept = 0;
  for (let i = 0; i < front.count; i++) {
    const r = active[i] as number;
    if (h >= (rows[r + 2] as number)) {
      front.area += rows[r + 3] as number;
      front.moment += (rows[r + 3] as number) * (rows[r + 4] as number);
    } else active[kept++] = r;
  }
  front.count = kept;
};

/** Volume under `out.level` and its derivatives, into `out`; the sums of measureCells, without a division. */
export const measureFront = (front: LevelFront, out: Measure): void => {
  const { rows, order, first, active, bottom, step } = front;
  const h = out.level;
  const reach = shelfAt(h, bottom, step);
  for (; front.joined <= reach; front.joined++) {
    const end = first[front.joined + 1] as number;
    for (let i = first[front.joined] as number; i < end; i++) active[front.count++] = order[i] as number;
  }
  let below = bottom;
  let above = Number.POSITIVE_INFINITY;
  let v = front.area * h - front.moment;
  let a = front.area;
  let s = 0;
  let c = 0;
  for (let i = 0; i < front.count; i++) {
    const r = active[i] as number;
    const z1 = rows[r] as number;
    if (h <= z1) {
      if (z1 < above) above = z1;
      continue;
    }
    const z3 = rows[r + 2] as number;
    const w = rows[r + 3] as number;
    if (h >= z3) {
      if (z3 > below) below = z3;
      v += w * (h - (rows[r + 4] as number));
      a += w;
      continue;
    }
    const z2 = rows[r + 1] as number;
    if (h <= z2) {
      if (z1 > below) below = z1;
      if (z2 < above) above = z2;
      const q = rows[r + 5] as number;
      const d = h - z1;
      const qd = q * d;
      v += (qd * d * d) / 3;
      a += qd * d;
      s += 2 * qd;
      c += 2 * q;
    } else {
      if (z2 > below) below = z2;
      if (z3 < above) above = z3;
      const q = rows[r + 6] as number;
      const d = z3 - h;
      const qd = q * d;
      v += w * (h - (rows[r + 4] as number)) + (qd * d * d) / 3;
      a += w - qd * d;
      s += 2 * qd;
      c -= 2 * q;
    }
  }
  front.below = below;
  front.above = above;
  out.volume = v;
  out.area = a;
  out.slope = s;
  out.curve = c;
};

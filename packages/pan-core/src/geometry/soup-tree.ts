/**
 * Boxes around neighbouring triangles, boxes around those, up to one box around all. Each node stands over a run
 * of {@link BRANCHES} nodes of the level below; the lowest level stands over runs of as many triangles.
 */
export interface SoupTree {
  /** Triangle numbers, neighbours near one another. */
  readonly order: Uint32Array;
  /** From the lowest level to the top one, which has one node. */
  readonly levels: readonly SoupLevel[];
}

export interface SoupLevel {
  readonly count: number;
  /** Six to a node: low x, y, z, high x, y, z. */
  readonly boxes: Float32Array;
}

export const BRANCHES = 4;

/** Cells along each axis are 2 to this power; three of them make a key. */
const BITS = 8;
const CELLS = 1 << BITS;
/** Keys are sorted by their lower and their upper half. */
const HALF = (3 * BITS) / 2;
const SAMPLES = 1024;
/** Share of the samples left out at each end, so that stray triangles far away do not stretch the cells. */
const STRAY = 0.02;

/**
 * Sorts triangles along a curve that visits the cells of a grid so that neighbours on the curve are neighbours
 * in space (Morton, A computer oriented geodetic data base, IBM 1966, from memory), then boxes runs of them.
 * Two sweeps of a counting sort and one to box: no comparison, nothing recursive, time in step with the count.
 *
 * @param corners Nine coordinates per triangle; at least one triangle.
 */
export const soupTree = (corners: Float32Array): SoupTree => {
  const order = distinct(corners, sorted(cellKeys(corners)));
  const levels: SoupLevel[] = [lowestLevel(corners, order)];
  for (let top = levels[0]!; top.count > 1; ) {
    top = levelOver(top);
    levels.push(top);
  }
  return { order, levels };
};

const cellKeys = (corners: Float32Array): Uint32Array => {
  const { low, scale } = frameOf(corners);
  const [lowX, lowY, lowZ] = low;
  const spread = Uint32Array.from({ length: CELLS }, (_, v) => {
    let out = 0;
    for (let bit = 0; bit < BITS; bit++) out |= ((v >> bit) & 1) << (3 * bit);
    return out;
  });
  const most = CELLS - 1;
  const keys = new Uint32Array(corners.length / 9);
  for (let i = 0, o = 0; i < keys.length; i++, o += 9) {
    const x = (corners[o]! + corners[o + 3]! + corners[o + 6]! - lowX) * scale;
    const y = (corners[o + 1]! + corners[o + 4]! + corners[o + 7]! - lowY) * scale;
    const z = (corners[o + 2]! + corners[o + 5]! + corners[o + 8]! - lowZ) * scale;
    const cx = x > 0 ? (x < most ? x | 0 : most) : 0;
    const cy = y > 0 ? (y < most ? y | 0 : most) : 0;
    const cz = z > 0 ? (z < most ? z | 0 : most) : 0;
    keys[i] = spread[cx]! | (spread[cy]! << 1) | (spread[cz]! << 2);
  }
  return keys;
};

/** Where cells begin, in sums of three corners, and how many there are to a unit: cubes, over most of the soup. */
const frameOf = (
  corners: Float32Array,
): { readonly low: readonly [number, number, number]; readonly scale: number } => {
  const count = corners.length / 9;
  const step = Math.max(1, Math.floor(count / SAMPLES));
  const along = (axis: number): readonly [number, number] => {
    const values: number[] = [];
    for (let i = 0; i < count; i += step) {
      const o = 9 * i + axis;
      values.push(corners[o]! + corners[o + 3]! + corners[o + 6]!);
    }
    values.sort((a, b) => a - b);
    const skip = Math.floor(STRAY * values.length);
    const [from, to] = [values[skip]!, values[values.length - 1 - skip]!];
    const more = (to - from) / 8;
    return [from - more, to + more];
  };
  const [x, y, z] = [along(0), along(1), along(2)];
  const widest = Math.max(x[1] - x[0], y[1] - y[0], z[1] - z[0]);
  return { low: [x[0], y[0], z[0]], scale: widest > 0 ? CELLS / widest : 0 };
};

const sorted = (keys: Uint32Array): Uint32Array => sweep(keys, HALF, sweep(keys, 0, null));

/**
 * Leaves out what repeats the triangle before it: a file may hold one facet a million times, and no box tells them
 * apart.
 */
const distinct = (corners: Float32Array, order: Uint32Array): Uint32Array => {
  let count = 1;
  for (let i = 1; i < order.length; i++) {
    const [a, b] = [9 * order[count - 1]!, 9 * order[i]!];
    let k = 0;
    while (k < 9 && corners[a + k] === corners[b + k]) k++;
    if (k < 9) order[count++] = order[i]!;
  }
  return count === order.length ? order : order.slice(0, count);
};

/** One stable sweep of a counting sort by half of the key; `before` is the order so far. */
const sweep = (keys: Uint32Array, shift: number, before: Uint32Array | null): Uint32Array => {
  const digits = 1 << HALF;
  const mask = digits - 1;
  const places = new Uint32Array(digits + 1);
  for (let i = 0; i < keys.length; i++) places[((keys[i]! >>> shift) & mask) + 1]!++;
  for (let d = 1; d <= digits; d++) places[d] = places[d]! + places[d - 1]!;
  const out = new Uint32Array(keys.length);
  for (let i = 0; i < keys.length; i++) {
    const t = before === null ? i : before[i]!;
    out[places[(keys[t]! >>> shift) & mask]!++] = t;
  }
  return out;
};

const lowestLevel = (corners: Float32Array, order: Uint32Array): SoupLevel => {
  const count = Math.ceil(order.length / BRANCHES);
  const boxes = new Float32Array(6 * count);
  for (let i = 0; i < count; i++) {
    const last = Math.min(order.length, (i + 1) * BRANCHES);
    let [x0, y0, z0] = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY];
    let [x1, y1, z1] = [Number.NEGATIVE_INFINITY, Number.NEGATIVE_INFINITY, Number.NEGATIVE_INFINITY];
    for (let j = i * BRANCHES; j < last; j++) {
      const from = 9 * order[j]!;
      for (let o = from; o < from + 9; o += 3) {
        const x = corners[o]!;
        const y = corners[o + 1]!;
        const z = corners[o + 2]!;
        if (x < x0) x0 = x;
        if (x > x1) x1 = x;
        if (y < y0) y0 = y;
        if (y > y1) y1 = y;
        if (z < z0) z0 = z;
        if (z > z1) z1 = z;
      }
    }
    const b = 6 * i;
    boxes[b] = x0;
    boxes[b + 1] = y0;
    boxes[b + 2] = z0;
    boxes[b + 3] = x1;
    boxes[b + 4] = y1;
    boxes[b + 5] = z1;
  }
  return { count, boxes };
};

const levelOver = (below: SoupLevel): SoupLevel => {
  const count = Math.ceil(below.count / BRANCHES);
  const boxes = emptyBoxes(count);
  for (let i = 0; i < below.count; i++) {
    const [from, to] = [6 * i, 6 * Math.floor(i / BRANCHES)];
    for (let k = 0; k < 3; k++) {
      if (below.boxes[from + k]! < boxes[to + k]!) boxes[to + k] = below.boxes[from + k]!;
      if (below.boxes[from + k + 3]! > boxes[to + k + 3]!) boxes[to + k + 3] = below.boxes[from + k + 3]!;
    }
  }
  return { count, boxes };
};

const emptyBoxes = (count: number): Float32Array => {
  const boxes = new Float32Array(6 * count);
  for (let b = 0; b < boxes.length; b += 6) {
    boxes.fill(Number.POSITIVE_INFINITY, b, b + 3);
    boxes.fill(Number.NEGATIVE_INFINITY, b + 3, b + 6);
  }
  return boxes;
};

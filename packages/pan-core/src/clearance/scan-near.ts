import { type TriangleSoup, triangleSoup } from '../geometry/index.js';
import { NO_ROCK } from './least-gap.js';
import type { ScanBox } from './scan-box.js';
import { scanGap } from './scan-gap.js';
import type { ScanPlace } from './scan-place.js';
import { leastToBox, type Wall } from './scan-wall.js';

/** Enough that in a scan of a million the first bound is mostly within a few millimetres, and soon searched. */
const SAMPLES = 4096;
/** Cells along the longest side of the space around the body. */
const CELLS = 48;
/** More than rounding in single precision can hide, mm. */
const MARGIN = 1e-3;
const UNKNOWN = -1;

/**
 * The triangles of a scan that can be nearest to a body, found in one pass over the file's own order: for a single
 * question this spares the tree. A sample bounds the distance from above; a triangle is left out when the cell of
 * its first corner is farther from the body than that by more than the triangle is long. Each cell's distance is
 * worked out when a triangle first asks for it.
 *
 * @param place The scan of an engine at rest.
 * @param samples Triangles looked at for a first bound, evenly through the file.
 */
export const nearScan = (
  walls: readonly Wall[],
  soup: TriangleSoup,
  place: ScanPlace,
  samples = SAMPLES,
): TriangleSoup => {
  const { corners, count } = soup;
  const step = Math.max(1, Math.floor(count / samples));
  const sample = new Float32Array(9 * Math.ceil(count / step));
  for (let i = 0, o = 0; i < count; i += step, o += 9) sample.set(corners.subarray(9 * i, 9 * i + 9), o);
  const rough = { enough: Number.POSITIVE_INFINITY, slack: 0 };
  const reach = scanGap(walls, triangleSoup(sample), place, NO_ROCK, rough).distance + MARGIN;
  return triangleSoup(kept(corners, within(walls, corners, place, reach)));
};

const kept = (corners: Float32Array, near: readonly number[]): Float32Array => {
  const out = new Float32Array(9 * near.length);
  near.forEach((triangle, i) => {
    out.set(corners.subarray(9 * triangle, 9 * triangle + 9), 9 * i);
  });
  return out;
};

const within = (
  walls: readonly Wall[],
  corners: Float32Array,
  { matrix, shift }: ScanPlace,
  reach: number,
): readonly number[] => {
  const [a, b, c] = matrix;
  const [a0, a1, a2, b0, b1, b2, c0, c1, c2] = [...a, ...b, ...c] as const;
  const [shiftX, shiftY, shiftZ] = shift;
  const unit = Math.hypot(a0, b0, c0) * (1 + 1e-6);
  const { low, high } = spaceOf(walls, reach);
  const [lowX, lowY, lowZ] = low;
  const size = Math.max(high[0] - lowX, high[1] - lowY, high[2] - lowZ) / CELLS;
  const [nx, ny, nz] = ([0, 1, 2] as const).map((k) => Math.ceil((high[k] - low[k]) / size) + 1) as [
    number,
    number,
    number,
  ];
  const [endX, endY, endZ] = [lowX + nx * size, lowY + ny * size, lowZ + nz * size];
  const cells = new Float32Array(nx * ny * nz).fill(UNKNOWN);
  const box: ScanBox = { x: 0, y: 0, z: 0, halfX: size / 2, halfY: size / 2, halfZ: size / 2 };
  const cellGap = (i: number, j: number, k: number): number => {
    box.x = lowX + (i + 0.5) * size;
    box.y = lowY + (j + 0.5) * size;
    box.z = lowZ + (k + 0.5) * size;
    let least = Number.POSITIVE_INFINITY;
    for (const wall of walls) least = Math.min(least, leastToBox(wall, box, least));
    return Math.max(0, least - MARGIN);
  };
  const near: number[] = [];
  for (let o = 0, triangle = 0; o < corners.length; o += 9, triangle++) {
    const u = corners[o]!;
    const v = corners[o + 1]!;
    const w = corners[o + 2]!;
    const x = a0 * u + a1 * v + a2 * w + shiftX;
    const y = b0 * u + b1 * v + b2 * w + shiftY;
    const z = c0 * u + c1 * v + c2 * w + shiftZ;
    // To the nearest place of the grid; the way there counts, as a box is convex.
    const [gx, gy, gz] = [clamp(x, lowX, endX), clamp(y, lowY, endY), clamp(z, lowZ, endZ)];
    const i = Math.min(nx - 1, ((gx - lowX) / size) | 0);
    const j = Math.min(ny - 1, ((gy - lowY) / size) | 0);
    const k = Math.min(nz - 1, ((gz - lowZ) / size) | 0);
    const outside = (x - gx) ** 2 + (y - gy) ** 2 + (z - gz) ** 2;
    let gap = 0;
    if (outside > 0) {
      // The space reaches past the body by `reach` all round.
      gap = Math.sqrt(outside) + reach;
    } else {
      const cell = (k * ny + j) * nx + i;
      gap = cells[cell]!;
      if (gap === UNKNOWN) {
        gap = cellGap(i, j, k);
        cells[cell] = gap;
        // A single-precision cell may round up.
        gap -= MARGIN;
      }
    }
    const over = gap - reach - MARGIN;
    if (over > 0) {
      const p = (corners[o + 3]! - u) ** 2 + (corners[o + 4]! - v) ** 2 + (corners[o + 5]! - w) ** 2;
      const q = (corners[o + 6]! - u) ** 2 + (corners[o + 7]! - v) ** 2 + (corners[o + 8]! - w) ** 2;
      const long = over / unit;
      if (p < long * long && q < long * long) continue;
    }
    near.push(triangle);
  }
  return near;
};

const clamp = (v: number, low: number, high: number): number => Math.max(low, Math.min(v, high));

const spaceOf = (walls: readonly Wall[], reach: number) => {
  const along = (k: 0 | 1 | 2, s: 1 | -1): number =>
    s * (Math.max(...walls.map(({ middle, half }) => s * middle[k] + half[k])) + reach);
  return {
    low: [along(0, -1), along(1, -1), along(2, -1)] as const,
    high: [along(0, 1), along(1, 1), along(2, 1)] as const,
  };
};

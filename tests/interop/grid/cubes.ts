import { type Axis, inMetal, type Point, type Space } from './space.js';

/** How a space is cut: `size` of a cube (the whole width across y when prismatic), how many along each axis. */
export interface Frame {
  readonly space: Space;
  readonly size: Point;
  readonly counts: Point;
}

/** The cubes that hold any oil, and where to find them. Triples lie one after another. */
export interface Cubes {
  readonly frame: Frame;
  readonly count: number;
  readonly centre: Float64Array;
  readonly half: Float64Array;
  readonly volume: Float64Array;
  /** 1 where every sample is room. */
  readonly full: Uint8Array;
  /** The cube at a place of the frame, or −1. */
  readonly index: Int32Array;
}

/** Samples along each side of a cube, or of a square when prismatic. */
const SAMPLES = { prismatic: 4, wide: 3 } as const;

export const frameOf = (space: Space, cell: number): Frame => {
  const span = (axis: Axis): number => space.max[axis] - space.min[axis];
  const size: Point = [cell, space.prismatic ? span(1) : cell, cell];
  const along = (axis: Axis): number => Math.ceil(span(axis) / size[axis] - 1e-9);
  return { space, size, counts: [along(0), along(1), along(2)] };
};

export const samplesAlong = ({ space }: Frame, axis: Axis): number =>
  space.prismatic ? (axis === 1 ? 1 : SAMPLES.prismatic) : SAMPLES.wide;

/** The i-th of n sample places along a piece. */
export const sampleAt = (from: number, size: number, i: number, n: number): number =>
  from + (size * (i + 0.5)) / n;

export const room = (space: Space, point: Point): boolean =>
  space.inside(point) && !inMetal(space.screens, point);

export const eachCube = (frame: Frame, visit: (slot: number, corner: Point) => void): void => {
  const { space, size, counts } = frame;
  let slot = 0;
  for (let k = 0; k < counts[2]; k++) {
    for (let j = 0; j < counts[1]; j++) {
      for (let i = 0; i < counts[0]; i++) {
        visit(slot++, [space.min[0] + i * size[0], space.min[1] + j * size[1], space.min[2] + k * size[2]]);
      }
    }
  }
};

/** The cube that a point lies in, or −1. */
export const cubeAt = ({ frame, index }: Cubes, point: Point): number => {
  const at = (axis: Axis): number => Math.floor((point[axis] - frame.space.min[axis]) / frame.size[axis]);
  const [i, j, k] = [at(0), at(1), at(2)];
  const [nx, ny, nz] = frame.counts;
  const within = i >= 0 && j >= 0 && k >= 0 && i < nx && j < ny && k < nz;
  return within ? (index[(k * ny + j) * nx + i] as number) : -1;
};

export const cubesOf = (space: Space, cell: number): Cubes => {
  const frame = frameOf(space, cell);
  const slots = frame.counts[0] * frame.counts[1] * frame.counts[2];
  const index = new Int32Array(slots).fill(-1);
  const centre: number[] = [];
  const half: number[] = [];
  const volume: number[] = [];
  const full: number[] = [];
  eachCube(frame, (slot, corner) => {
    const filled = fill(frame, corner);
    if (filled === null) return;
    index[slot] = volume.length;
    centre.push(...filled.centre);
    half.push(...filled.half);
    volume.push(filled.volume);
    full.push(filled.full ? 1 : 0);
  });
  return {
    frame,
    count: volume.length,
    centre: Float64Array.from(centre),
    half: Float64Array.from(half),
    volume: Float64Array.from(volume),
    full: Uint8Array.from(full),
    index,
  };
};

const fill = (
  frame: Frame,
  corner: Point,
): { centre: number[]; half: number[]; volume: number; full: boolean } | null => {
  const { space, size } = frame;
  const n = ([0, 1, 2] as const).map((axis) => samplesAlong(frame, axis)) as [number, number, number];
  const low = [Infinity, Infinity, Infinity];
  const high = [-Infinity, -Infinity, -Infinity];
  const sum = [0, 0, 0];
  const all = n[0] * n[1] * n[2];
  let hits = 0;
  let share = 0;
  for (let s = 0; s < all; s++) {
    const point: Point = [
      sampleAt(corner[0], size[0], s % n[0], n[0]),
      sampleAt(corner[1], size[1], Math.floor(s / n[0]) % n[1], n[1]),
      sampleAt(corner[2], size[2], Math.floor(s / (n[0] * n[1])), n[2]),
    ];
    if (!room(space, point)) continue;
    hits++;
    share += space.share(point);
    for (const axis of [0, 1, 2] as const) {
      sum[axis] = (sum[axis] as number) + point[axis];
      low[axis] = Math.min(low[axis] as number, point[axis]);
      high[axis] = Math.max(high[axis] as number, point[axis]);
    }
  }
  if (hits === 0) return null;
  const step = (axis: Axis): number => size[axis] / n[axis];
  return {
    centre: sum.map((value) => value / hits),
    half: ([0, 1, 2] as const).map(
      (axis) => ((high[axis] as number) - (low[axis] as number) + step(axis)) / 2,
    ),
    volume: (share * size[0] * size[1] * size[2]) / all,
    full: hits === all,
  };
};

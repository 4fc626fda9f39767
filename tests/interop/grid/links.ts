import { type Cubes, cubeAt, eachCube, room, sampleAt, samplesAlong } from './cubes.js';
import type { Axis, Passage, Point, Screen, Space } from './space.js';

/** How a link passes oil: always, or as the plate's opening it goes through. */
export const KINDS = ['open', 'edge', 'hole', 'weep', 'forward', 'rearward'] as const;
export type Kind = (typeof KINDS)[number];

/** Rectangles through which oil passes from one cube to another; triples lie one after another. */
export interface Links {
  readonly count: number;
  readonly from: Int32Array;
  readonly to: Int32Array;
  /** Position in KINDS. */
  readonly kind: Uint8Array;
  readonly centre: Float64Array;
  readonly half: Float64Array;
}

const NEAR = 1e-7;

interface Patch {
  readonly kind: Kind;
  readonly from: number;
  readonly to: number;
  readonly low: [number, number, number];
  readonly high: [number, number, number];
}

const moved = (point: Point, axis: Axis, by: number): Point => [
  axis === 0 ? point[0] + by : point[0],
  axis === 1 ? point[1] + by : point[1],
  axis === 2 ? point[2] + by : point[2],
];

/** Every link across the near face (at the smaller coordinate) of every cube. */
export const linksOf = (cubes: Cubes): Links => {
  const { space } = cubes.frame;
  const from: number[] = [];
  const to: number[] = [];
  const kind: number[] = [];
  const centre: number[] = [];
  const half: number[] = [];
  eachCube(cubes.frame, (_, corner) => {
    for (const axis of space.prismatic ? ([0, 2] as const) : ([0, 1, 2] as const)) {
      const screens = space.screens.filter(
        (one) => one.axis === axis && Math.abs(one.at - corner[axis]) < NEAR,
      );
      const whole = screens.length === 0 ? wholeFace(cubes, corner, axis) : null;
      for (const patch of whole === null ? patchesOn(cubes, screens, corner, axis) : [whole]) {
        from.push(patch.from);
        to.push(patch.to);
        kind.push(KINDS.indexOf(patch.kind));
        for (const a of [0, 1, 2] as const) {
          centre.push((patch.low[a] + patch.high[a]) / 2);
          half.push((patch.high[a] - patch.low[a]) / 2);
        }
      }
    }
  });
  return {
    count: from.length,
    from: Int32Array.from(from),
    to: Int32Array.from(to),
    kind: Uint8Array.from(kind),
    centre: Float64Array.from(centre),
    half: Float64Array.from(half),
  };
};

/** The whole face, when both its cubes are full and no plate lies on it: the common case, without sampling. */
const wholeFace = (cubes: Cubes, corner: Point, axis: Axis): Patch | null => {
  const { size } = cubes.frame;
  const middle: Point = [corner[0] + size[0] / 2, corner[1] + size[1] / 2, corner[2] + size[2] / 2];
  const to = cubeAt(cubes, middle);
  const from = cubeAt(cubes, moved(middle, axis, -size[axis]));
  if (from < 0 || to < 0 || cubes.full[from] === 0 || cubes.full[to] === 0) return null;
  const high: [number, number, number] = [corner[0] + size[0], corner[1] + size[1], corner[2] + size[2]];
  high[axis] = corner[axis];
  return { kind: 'open', from, to, low: [corner[0], corner[1], corner[2]], high };
};

/** What lets oil through at one point of a face, and how far beyond the face it comes out. */
const through = (
  space: Space,
  screens: readonly Screen[],
  axis: Axis,
  point: Point,
): readonly [Kind, number] | null => {
  let kind: Kind = 'open';
  let beyond = NEAR;
  for (const screen of screens) {
    const what: Passage = screen.passage(point);
    if (what === 'solid') return null;
    if (what === 'none') continue;
    kind = what;
    if (what !== 'weep' && what !== 'edge') beyond = screen.thickness + NEAR;
  }
  const joined = room(space, moved(point, axis, -NEAR)) && room(space, moved(point, axis, beyond));
  return joined ? [kind, beyond] : null;
};

const patchesOn = (cubes: Cubes, screens: readonly Screen[], corner: Point, axis: Axis): readonly Patch[] => {
  const { frame } = cubes;
  const { space, size } = frame;
  const [p, q] = ([0, 1, 2] as const).filter((a) => a !== axis) as [Axis, Axis];
  const [m, n] = [samplesAlong(frame, p), samplesAlong(frame, q)];
  const patches: Patch[] = [];
  for (let s = 0; s < m * n; s++) {
    const point: [number, number, number] = [corner[0], corner[1], corner[2]];
    point[p] = sampleAt(corner[p], size[p], s % m, m);
    point[q] = sampleAt(corner[q], size[q], Math.floor(s / m), n);
    const found = through(space, screens, axis, point);
    if (found === null) continue;
    const [kind, beyond] = found;
    const from = cubeAt(cubes, moved(point, axis, -NEAR));
    const to = cubeAt(cubes, moved(point, axis, beyond));
    if (from < 0 || to < 0) continue;
    let patch = patches.find((one) => one.kind === kind && one.from === from && one.to === to);
    if (patch === undefined) {
      patch = { kind, from, to, low: [...point], high: [...point] };
      patches.push(patch);
    }
    const holds = (at: Point): boolean => through(space, screens, axis, at)?.[0] === kind;
    for (const [along, count] of [
      [p, m],
      [q, n],
    ] as const) {
      const far = corner[along] + size[along];
      const step = count === 1 ? size[along] : size[along] / count;
      const low = Math.max(corner[along], point[along] - step);
      const high = Math.min(far, point[along] + step);
      patch.low[along] = Math.min(patch.low[along], reach(point, along, low, holds));
      patch.high[along] = Math.max(patch.high[along], reach(point, along, high, holds));
    }
  }
  return patches;
};

/** How far an opening reaches from a point inside it towards a limit. */
const reach = (point: Point, along: Axis, limit: number, holds: (at: Point) => boolean): number => {
  const at = (value: number): Point => moved(point, along, value - point[along]);
  if (holds(at(limit + (point[along] - limit) * 1e-9))) return limit;
  let inside = point[along];
  let outside = limit;
  for (let i = 0; i < 24; i++) {
    const middle = (inside + outside) / 2;
    if (holds(at(middle))) inside = middle;
    else outside = middle;
  }
  return inside;
};

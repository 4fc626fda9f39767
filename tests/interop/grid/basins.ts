import { type Cubes, cubeAt } from './cubes.js';
import { KINDS, type Kind, type Links, linksOf } from './links.js';
import type { Point, Space } from './space.js';

/** A space as cubes and links: what the search for pools works on. */
export interface Grid {
  readonly cubes: Cubes;
  readonly links: Links;
  readonly mouth: number;
}

export const gridOf = (space: Space, cubes: Cubes): Grid => {
  const mouth = cubeAt(cubes, space.mouth);
  if (mouth < 0) throw new Error('The mouth lies outside the space.');
  return { cubes, links: linksOf(cubes), mouth };
};

/** The lowest way between two hollows of one kind: over a crest, or past a plate's edge or through its opening. */
export interface Saddle {
  readonly a: number;
  readonly b: number;
  readonly sill: number;
  readonly plate: boolean;
  /** Where along the pan it lies. */
  readonly x: number;
}

/** A one-way door between two hollows: oil goes from `up` to `down` over `sill`. */
export interface DoorWay {
  readonly up: number;
  readonly down: number;
  readonly sill: number;
  readonly plate: true;
  readonly x: number;
}

/** The hollows of a space for one direction of gravity; heights count against gravity. */
export interface Basins {
  readonly count: number;
  /** The hollow that oil in a cube runs down to; −1 for a cube that nothing joins. */
  readonly hollow: Int32Array;
  /** Height of each cube's middle, and how far its oil spreads to either side of it. */
  readonly height: Float64Array;
  readonly spread: Float64Array;
  /** The crests, as a tree, and the lowest way past or through plates for each pair of hollows. */
  readonly saddles: readonly Saddle[];
  readonly doors: readonly DoorWay[];
}

export interface Passing {
  /** Openings of plates that pass oil both ways, beside their edges; all others but doors are shut. */
  readonly open: readonly Kind[];
  /** True when doors pass oil their way. */
  readonly doors: boolean;
}

const BINS = 1 << 16;
const OPEN = KINDS.indexOf('open');

const rootOf = (parent: Int32Array, start: number): number => {
  let at = start;
  while (parent[at] !== at) {
    parent[at] = parent[parent[at] as number] as number;
    at = parent[at] as number;
  }
  return at;
};

/** Positions sorted by value, to 1/65536 of the range. */
const sorted = (values: Float64Array): Int32Array => {
  let low = Infinity;
  let high = -Infinity;
  for (const value of values) {
    if (value < low) low = value;
    if (value > high) high = value;
  }
  const scale = high > low ? (BINS - 1) / (high - low) : 0;
  const starts = new Int32Array(BINS + 1);
  const bins = new Int32Array(values.length);
  for (let i = 0; i < values.length; i++) {
    const bin = Math.floor((values[i]! - low) * scale);
    bins[i] = bin;
    starts[bin + 1]! += 1;
  }
  for (let i = 0; i < BINS; i++) starts[i + 1]! += starts[i] as number;
  const order = new Int32Array(values.length);
  for (let i = 0; i < bins.length; i++) order[starts[bins[i]!]!++] = i;
  return order;
};

/**
 * Finds the hollows by letting oil rise everywhere at once: open links are taken from the lowest up; where two
 * filled parts meet and both are deeper than `shallowest`, there is a saddle. Plates part hollows all along their
 * plane; the ways past and through them are saddles too.
 *
 * @param up Unit vector against gravity.
 */
export const basinsOf = (grid: Grid, up: Point, passing: Passing, shallowest: number): Basins => {
  const { cubes, links } = grid;
  const { height, spread, bottom } = cubeHeights(cubes, up);
  const sill = linkHeights(links, up);
  const parent = Int32Array.from({ length: cubes.count }, (_, i) => i);
  const size = new Int32Array(cubes.count).fill(1);
  const hollow = new Int32Array(cubes.count).fill(-1);
  const merged: number[] = [];
  const met: Saddle[] = [];
  for (const link of sorted(sill)) {
    if (links.kind[link] !== OPEN) continue;
    const a = links.from[link] as number;
    const b = links.to[link] as number;
    const [ra, rb] = [rootOf(parent, a), rootOf(parent, b)];
    if (ra === rb) continue;
    if (hollow[a] === -1 && hollow[b] === -1) {
      hollow[a] = merged.length;
      merged.push(merged.length);
    }
    if (hollow[a] === -1) hollow[a] = hollow[b] as number;
    else if (hollow[b] === -1) hollow[b] = hollow[a] as number;
    else joinParts(hollow[a] as number, hollow[b] as number, Math.max(bottom[ra]!, bottom[rb]!), link);
    const [less, more] = size[ra]! < size[rb]! ? [ra, rb] : [rb, ra];
    parent[less] = more;
    size[more]! += size[less]!;
    bottom[more] = Math.min(bottom[ra]!, bottom[rb]!);
  }
  function joinParts(a: number, b: number, floor: number, link: number): void {
    const at = sill[link]!;
    if (at - floor >= shallowest) met.push({ a, b, sill: at, plate: false, x: links.centre[3 * link]! });
    else merged[resolve(merged, a)] = resolve(merged, b);
  }
  return { height, spread, ...named(grid, merged, hollow, met, sill, passing) };
};

const resolve = (merged: readonly number[], start: number): number => {
  let at = start;
  while (merged[at] !== at) at = merged[at] as number;
  return at;
};

const cubeHeights = ({ count, centre, half }: Cubes, up: Point) => {
  const height = new Float64Array(count);
  const spread = new Float64Array(count);
  const bottom = new Float64Array(count);
  for (let i = 0; i < count; i++) {
    const [x, y, z] = [half[3 * i]! * up[0], half[3 * i + 1]! * up[1], half[3 * i + 2]! * up[2]];
    height[i] = centre[3 * i]! * up[0] + centre[3 * i + 1]! * up[1] + centre[3 * i + 2]! * up[2];
    // Half the range of the even spread that has a box's variance along this direction.
    spread[i] = Math.sqrt(x * x + y * y + z * z);
    bottom[i] = height[i]! - Math.abs(x) - Math.abs(y) - Math.abs(z);
  }
  return { height, spread, bottom };
};

const linkHeights = ({ count, centre, half }: Links, up: Point): Float64Array => {
  const sill = new Float64Array(count);
  const [ax, ay, az] = [Math.abs(up[0]), Math.abs(up[1]), Math.abs(up[2])];
  for (let i = 0; i < count; i++) {
    const k = 3 * i;
    const middle = centre[k]! * up[0] + centre[k + 1]! * up[1] + centre[k + 2]! * up[2];
    sill[i] = middle - half[k]! * ax - half[k + 1]! * ay - half[k + 2]! * az;
  }
  return sill;
};

/** Numbers the hollows that remain from 0 and says saddles and doors in those numbers. */
const named = (
  { links }: Grid,
  merged: readonly number[],
  hollow: Int32Array,
  met: readonly Saddle[],
  sill: Float64Array,
  passing: Passing,
) => {
  const names = new Map<number, number>();
  const name = (old: number): number => {
    const root = resolve(merged, old);
    if (!names.has(root)) names.set(root, names.size);
    return names.get(root) as number;
  };
  const kept = merged.map((_, k) => name(k));
  for (let i = 0; i < hollow.length; i++) {
    const own = hollow[i] as number;
    if (own !== -1) hollow[i] = kept[own] as number;
  }
  const crests = met.map((one): Saddle => ({ ...one, a: name(one.a), b: name(one.b) }));
  const plates = new Map<string, Saddle>();
  const doors = new Map<string, DoorWay>();
  for (let i = 0; i < links.count; i++) {
    const kind = KINDS[links.kind[i] as number] as Kind;
    const [from, to] = [hollow[links.from[i] as number] as number, hollow[links.to[i] as number] as number];
    if (kind === 'open' || from < 0 || to < 0 || from === to) continue;
    const lowest = { sill: sill[i]!, plate: true, x: links.centre[3 * i]! } as const;
    if (passing.open.includes(kind)) {
      const [a, b] = from < to ? [from, to] : [to, from];
      const known = plates.get(`${a} ${b}`);
      if (known === undefined || known.sill > sill[i]!) plates.set(`${a} ${b}`, { a, b, ...lowest });
    } else if (passing.doors && (kind === 'forward' || kind === 'rearward')) {
      const [up, down] = kind === 'forward' ? [from, to] : [to, from];
      const known = doors.get(`${up} ${down}`);
      if (known === undefined || known.sill > sill[i]!) doors.set(`${up} ${down}`, { up, down, ...lowest });
    }
  }
  return { count: names.size, hollow, saddles: [...crests, ...plates.values()], doors: [...doors.values()] };
};

import type { Crank } from '../design/index.js';
import { dot3, freeze, type Vec3 } from '../numeric/index.js';
import type { PanModel } from '../pan/index.js';
import type { OilAnswer } from './answer.js';
import { depthUnderOil } from './plumb.js';

/** How deep one throw's sweep reaches into oil. */
export interface CrankDip {
  /** Counted from 1 at the rear of the list of throws. */
  readonly throw: number;
  readonly x: number;
  /** mm below the surface of the pool there, negative by its height over the oil; null with no oil below it. */
  readonly depth: number | null;
}

const CORNERS = 192;
/** Room for rounding between two ways to the same depth, mm. */
const SAME_DEPTH = 1e-9;

/**
 * For each throw, how far the lowest wet point of its sweep lies under the surface of the pool that stands
 * there. The sweep is a disc about the crank's axis as thick as the big end; only the part of it inside a wet
 * cell can dip. The disc is a polygon with a corner at its lowest point, so it is short by at most 0.02 mm
 * elsewhere.
 */
export const crankDips = (model: PanModel, answer: OilAnswer): readonly CrankDip[] => {
  const { crank } = model.design.engine;
  if (crank === null || crank.throws === null) return [];
  return freeze(crank.throws.map((x, i) => ({ throw: i + 1, x, depth: dipOf(model, answer, crank, x) })));
};

const dipOf = (model: PanModel, answer: OilAnswer, crank: Crank, x: number): number | null => {
  const ends = [x - crank.throwWidth / 2, x + crank.throwWidth / 2] as const;
  let deepest = 0;
  for (const pool of answer.pools) {
    if (pool.volume <= 0) continue;
    for (const cell of pool.cells) {
      const [rear, front] = reachOf(model, cell);
      const [from, to] = [Math.max(rear, ends[0]), Math.min(front, ends[1])];
      if (from >= to) continue;
      for (const at of [from, to]) {
        // The part in the cell reaches no deeper than the whole disc: cutting it is for those that could count.
        if (pool.level - dot3(answer.up, lowestAt(crank, at, answer.up)) + SAME_DEPTH <= deepest) continue;
        const low = lowestIn(model, cell, discAt(crank, at, answer.up), answer.up);
        if (low !== null) deepest = Math.max(deepest, pool.level - low);
      }
    }
  }
  if (deepest > 0) return deepest;
  const over = ends
    .map((at) => depthUnderOil(model, answer, lowestAt(crank, at, answer.up)))
    .filter((depth) => depth !== null);
  return over.length === 0 ? null : Math.max(...over);
};

const reachOf = (model: PanModel, cell: number): readonly [number, number] => {
  let [rear, front] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const face of model.cells[cell]?.faces ?? [])
    for (const [x] of face.loop) {
      if (x < rear) rear = x;
      if (x > front) front = x;
    }
  return [rear, front];
};

/** The sweep's section at x as a polygon that starts at its lowest point along `up`. */
const discAt = (crank: Crank, x: number, up: Vec3): readonly Vec3[] => {
  const lowest = Math.atan2(-up[2], -up[1]);
  return Array.from({ length: CORNERS }, (_, i) => rimAt(crank, x, lowest + (2 * Math.PI * i) / CORNERS));
};

const lowestAt = (crank: Crank, x: number, up: Vec3): Vec3 => rimAt(crank, x, Math.atan2(-up[2], -up[1]));

const rimAt = (crank: Crank, x: number, t: number): Vec3 => {
  const radius = crank.stroke / 2 + crank.bigEndReach;
  return [x, radius * Math.cos(t), crank.centreAboveRail + radius * Math.sin(t)];
};

/** Lowest height along `up` of the part of a polygon that lies in a cell; null when none does. */
const lowestIn = (model: PanModel, cell: number, polygon: readonly Vec3[], up: Vec3): number | null => {
  let rest = polygon;
  for (const face of model.cells[cell]?.faces ?? []) {
    const plane = model.table.planes[face.plane];
    if (plane === undefined) continue;
    rest = behind(rest, (p) => face.side * (dot3(plane.normal, p) - plane.offset));
    if (rest.length === 0) return null;
  }
  return Math.min(...rest.map((p) => dot3(up, p)));
};

/** The part of a convex polygon where `off` is not positive. */
const behind = (polygon: readonly Vec3[], off: (p: Vec3) => number): readonly Vec3[] => {
  const kept: Vec3[] = [];
  polygon.forEach((a, i) => {
    const b = polygon[(i + 1) % polygon.length] as Vec3;
    const [da, db] = [off(a), off(b)];
    if (da <= 0) kept.push(a);
    if (da < 0 !== db < 0 && da !== 0 && db !== 0) {
      const t = da / (da - db);
      kept.push([a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1]), a[2] + t * (b[2] - a[2])]);
    }
  });
  return kept;
};

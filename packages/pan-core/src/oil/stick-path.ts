import type { Dipstick } from '../design/index.js';
import { flatAxes } from '../geometry/index.js';
import { dot3, subtract3, unit3, type Vec2, type Vec3 } from '../numeric/index.js';
import type { PanModel } from '../pan/index.js';
import { type Stretch, stretches } from './plumb.js';

/** A baffle in the stick's way, with the distance along the stick from where its tube enters, mm. */
export interface StickCrossing {
  readonly baffle: string;
  readonly at: Vec3;
  readonly along: number;
}

/** The stick as a straight line through the cells, from where its tube enters down to the first metal. */
export interface StickPath {
  readonly enters: Vec3;
  /** Unit vector down the stick. */
  readonly along: Vec3;
  /** Its way through the cells without a break. */
  readonly run: readonly Stretch[];
  /** Distance at which it meets the sheet, mm. */
  readonly leaves: number;
  /** Baffles it meets before that where they have no hole for it. */
  readonly crossings: readonly StickCrossing[];
}

/** A gap between two cells of this length is metal, mm. */
const GAP = 1e-6;

/** null when the line never comes into the pan at or below the point where the tube enters. */
export const stickPath = (model: PanModel, { enters, toward }: Dipstick): StickPath | null => {
  const along = unit3(subtract3(toward, enters));
  const run: Stretch[] = [];
  for (const next of stretches(model, enters, along)) {
    if (next.leaves <= 0) continue;
    const last = run.at(-1);
    if (last !== undefined && next.enters > last.leaves + GAP) break;
    run.push(next);
  }
  if (run.length === 0) return null;
  const leaves = Math.max(...run.map((s) => s.leaves));
  return { enters, along, run, leaves, crossings: crossingsOf(model, enters, along, leaves) };
};

/** The place on the stick at a length from where it enters, in mm. */
export const pointOnStick = ({ enters, along }: Pick<StickPath, 'enters' | 'along'>, t: number): Vec3 => [
  enters[0] + t * along[0],
  enters[1] + t * along[1],
  enters[2] + t * along[2],
];

/** Baffles that a tube along a line of points meets where they have no hole for it; `along` from each leg's start. */
export const tubeCrossings = (model: PanModel, route: readonly Vec3[]): readonly StickCrossing[] =>
  route.slice(1).flatMap((to, i) => {
    const from = route[i] as Vec3;
    const leg = subtract3(to, from);
    return crossingsOf(model, from, unit3(leg), Math.sqrt(dot3(leg, leg)));
  });

const crossingsOf = (model: PanModel, enters: Vec3, along: Vec3, leaves: number): readonly StickCrossing[] =>
  model.barriers
    .flatMap((barrier): readonly StickCrossing[] => {
      const plane = model.table.planes[barrier.plane];
      if (plane === undefined) return [];
      const t = (plane.offset - dot3(plane.normal, enters)) / dot3(plane.normal, along);
      if (!(t > 0 && t < leaves - GAP)) return [];
      const at = pointOnStick({ enters, along }, t);
      const { u, v } = flatAxes(plane.normal);
      const flat: Vec2 = [at[u], at[v]];
      const covered = barrier.covers.some((c) => inConvex(c, flat));
      const open = barrier.passages.some((p) => p.kind === 'hole' && inConvex(p.polygon, flat));
      return covered && !open ? [{ baffle: barrier.baffle.name, at, along: t }] : [];
    })
    .sort((a, b) => a.along - b.along);

/** Whether a point lies in a convex polygon, whichever way round that runs. */
const inConvex = (polygon: readonly Vec2[], [x, y]: Vec2): boolean => {
  const sides = polygon.map((a, i) => {
    const b = polygon[(i + 1) % polygon.length] as Vec2;
    return (b[0] - a[0]) * (y - a[1]) - (b[1] - a[1]) * (x - a[0]);
  });
  return sides.every((s) => s >= 0) || sides.every((s) => s <= 0);
};

import {
  add2,
  insetEdges,
  left2,
  lineSegment,
  type Path,
  polylinePath,
  scale2,
  subtract2,
  unit2,
} from '../geometry/index.js';
import { add3, dot3, scale3, subtract3, unit3, type Vec2, type Vec3 } from '../numeric/index.js';
import type { BendRule } from './bend-rule.js';
import { buttTrim } from './butt-trim.js';
import { FAR, type Facet, facetFlat, facetLocal, planeFacet } from './cutter.js';
import type { Fold } from './part.js';
import { footEnd, type WingFrame, wingPoint } from './wing-frame.js';

/** A leaf folded to the outer wall along one edge, and the bend between them, in the blank. */
export interface WingLeaf {
  /** The leaf's inside face beyond the bend. */
  readonly face: Facet;
  readonly zone: Facet;
  readonly angle: number;
  readonly allowance: number;
  readonly setback: number;
  /** Middle of the bend zone at the leaf's two ends, rear and front. */
  readonly fold: readonly [Vec2, Vec2];
  /** Rim of the leaf from its rear tangent point round by the pan's wall to its front one. */
  readonly rim: readonly Vec2[];
  /** Tangent points on the outer wall, rear and front. */
  readonly shoulder: readonly [Vec2, Vec2];
}

/** The outer wall: origin at its rear foot, s along x, t = z; the blank's own axes. */
export const outerFace = (frame: WingFrame): Facet => {
  const a = wingPoint(frame, frame.rear, frame.outer(frame.rear), 0);
  const b = wingPoint(frame, frame.front, frame.outer(frame.front), 0);
  return planeFacet(a, unit3(subtract3(b, a)), [0, 0, 1]);
};

/**
 * Lays the floor or the top of a wing beside its outer wall: tan(θ/2)·R comes off both sides of the corner
 * and the bend allowance goes between, square to the fold, which may run at any slope.
 */
export const wingLeaf = (
  frame: WingFrame,
  outer: Facet,
  which: 'floor' | 'top',
  radius: number,
  thickness: number,
  rule: BendRule,
): WingLeaf => {
  const z = (x: number, y: number, end: 'rear' | 'front'): number =>
    which === 'top' ? frame.top(x, y) : footEnd(frame, end);
  const corner = (x: number, y: number, end: 'rear' | 'front'): Vec3 => wingPoint(frame, x, y, z(x, y, end));
  const a = corner(frame.rear, frame.outer(frame.rear), 'rear');
  const b = corner(frame.front, frame.outer(frame.front), 'front');
  const edge = unit3(subtract3(b, a));
  const inwardRaw = subtract3(corner(frame.rear, frame.wall(frame.rear), 'rear'), a);
  const inward = unit3(subtract3(inwardRaw, scale3(edge, dot3(inwardRaw, edge))));
  const [fa, fb] = [facetFlat(outer, facetLocal(outer, a)), facetFlat(outer, facetLocal(outer, b))];
  const along = unit2(subtract2(fb, fa));
  // Into the outer wall: up from the floor's edge, down from the top's.
  const into = which === 'floor' ? left2(along) : scale2(left2(along), -1);
  const into3 = add3(scale3(outer.u, into[0]), scale3(outer.v, into[1]));
  const angle = Math.PI - Math.acos(Math.max(-1, Math.min(1, dot3(into3, inward))));
  const setback = Math.tan(angle / 2) * radius;
  const allowance = rule.allowance(angle);
  const face: Facet = {
    origin: a,
    u: edge,
    v: inward,
    bounds: ordered([-FAR, setback], [FAR, FAR]),
    at: add2(fa, scale2(into, 2 * setback - allowance)),
    along,
    across: scale2(into, -1),
    bend: false,
  };
  const chord = scale3(subtract3(inward, into3), setback);
  const chordLength = Math.hypot(...chord);
  const zone: Facet = {
    origin: add3(a, scale3(into3, setback)),
    u: edge,
    v: scale3(chord, 1 / chordLength),
    bounds: ordered([-FAR, 0], [FAR, chordLength]),
    at: add2(fa, scale2(into, setback)),
    along,
    across: scale2(into, -allowance / chordLength),
    bend: true,
  };
  const rimLocal = leafRim(frame, face, which, setback, thickness);
  const shoulder = [shoulderAt(fa, into, setback), shoulderAt(fb, into, setback)];
  const rim = rimLocal.map((p) => facetFlat(face, p));
  const ends = [rim[0]!, rim[rim.length - 1]!];
  const mid = (i: number): Vec2 => scale2(add2(shoulder[i]!, ends[i]!), 0.5);
  return {
    face,
    zone,
    angle,
    allowance,
    setback,
    fold: [mid(0), mid(1)],
    rim,
    shoulder: [shoulder[0]!, shoulder[1]!],
  };
};

const ordered = (min: Vec2, max: Vec2): readonly Vec2[] => [min, [max[0], min[1]], max, [min[0], max[1]]];

/** The outer wall's upright end, at the given distance from an edge of it. */
const shoulderAt = (at: Vec2, into: Vec2, setback: number): Vec2 => [at[0], at[1] + setback / into[1]];

/**
 * How far the top stops short of the pan's inside between two points of the wall, so that it butts on the
 * outside of the side plate standing above that edge.
 */
const topTrim = (frame: WingFrame, x0: number, x1: number, thickness: number): number => {
  const at = (x: number, y: number): Vec3 => wingPoint(frame, x, y, frame.top(x, y));
  const a = at(x0, frame.wall(x0));
  const edge = unit3(subtract3(at(x1, frame.wall(x1)), a));
  const square = (v: Vec3): Vec3 => unit3(subtract3(v, scale3(edge, dot3(v, edge))));
  const outward = square(subtract3(at(x0, frame.outer(x0)), a));
  return buttTrim(Math.acos(Math.max(-1, Math.min(1, dot3(outward, square([0, 0, 1]))))), thickness);
};

/** Rim of a leaf in its own (s, t): rear tangent point, pan's wall from rear to front, front tangent point. */
const leafRim = (
  frame: WingFrame,
  face: Facet,
  which: 'floor' | 'top',
  setback: number,
  thickness: number,
): readonly Vec2[] => {
  const foot = frame.foot[0]!;
  const floorZ = (x: number): number =>
    foot.from[1] + ((foot.to[1] - foot.from[1]) * (x - foot.from[0])) / (foot.to[0] - foot.from[0]);
  const local = (x: number, y: number): Vec2 =>
    facetLocal(face, wingPoint(frame, x, y, which === 'top' ? frame.top(x, y) : floorZ(x)));
  const stations = [frame.rear, ...frame.stations, frame.front];
  const wall = stations.map((x) => local(x, frame.wall(x)));
  const [a, b] = [local(frame.rear, frame.outer(frame.rear)), local(frame.front, frame.outer(frame.front))];
  const loop = [a, b, ...[...wall].reverse()];
  const trims = stations
    .slice(1)
    .map((x, i) => (which === 'top' ? topTrim(frame, stations[i]!, x, thickness) : 0))
    .reverse();
  const distances = [setback, 0, ...trims, 0];
  const inset = insetEdges(loop, distances);
  if (inset === null) return [a, ...wall, b];
  return [inset[0]!, ...inset.slice(2).reverse(), inset[1]!];
};

/** The fold of a leaf as the part lists it. */
export const leafFold = (leaf: WingLeaf, name: string, radius: number): Fold => ({
  name,
  from: leaf.fold[0],
  to: leaf.fold[1],
  angle: leaf.angle,
  radius,
  direction: 'up',
  allowance: leaf.allowance,
});

/** Outline of floor leaf, outer wall and top leaf, counter-clockwise. */
export const stripOutline = (floor: WingLeaf, top: WingLeaf): Path =>
  polylinePath(
    [
      ...floor.rim,
      floor.shoulder[1],
      top.shoulder[1],
      ...[...top.rim].reverse(),
      top.shoulder[0],
      floor.shoulder[0],
    ],
    true,
  );

/** Outline of an outer wall with its own foot and a top leaf. */
export const wallOutline = (foot: Path, top: WingLeaf): Path => {
  const points = [
    foot[foot.length - 1]!.to,
    top.shoulder[1],
    ...[...top.rim].reverse(),
    top.shoulder[0],
    foot[0]!.from,
  ];
  return [...foot, ...points.slice(1).map((p, i) => lineSegment(points[i]!, p))];
};

import { PanError } from '../errors/index.js';
import {
  type Arc,
  arcThrough,
  cross2,
  directionAt,
  distance2,
  dot2,
  left2,
  lineSegment,
  type Path,
  subtract2,
  unit2,
} from '../geometry/index.js';
import { add3, cross3, dot3, scale3, subtract3, unit3, type Vec2, type Vec3 } from '../numeric/index.js';
import { type Leaf, leafFlat } from './leaf.js';

/** A fold between two neighbours that ends at a corner: the corner follows its bend. */
export interface CornerBend {
  /** Into the neighbour before and the neighbour after, square to the fold, unit. */
  readonly before: Vec3;
  readonly after: Vec3;
  readonly rho: number;
  readonly angle: number;
}

/** A corner of a leaf's rim in its own axes: from the end of the edge before to the start of the one after. */
export interface RimCorner {
  readonly enter: Vec2;
  readonly leave: Vec2;
  readonly path: Path;
}

/** Arcs across a slanting plane are parts of ellipses; true arcs stand for them within this, mm. */
const ELLIPSE_ERROR = 0.001;
const MOST_ARCS = 16;
/** Edges turning less than this are one line for a step between two insets. */
const IN_LINE = 0.02;

/**
 * A loop of a leaf with every edge moved in by its own distance: corners mitred, stepped where two edges
 * lie in one line, or following the bend of the sheet that stands there.
 *
 * @throws PanError `shape-fold` where nothing is left of an edge
 */
export const rimCorners = (
  leaf: Leaf,
  loop: readonly Vec3[],
  insets: readonly number[],
  bends: readonly (CornerBend | null)[],
): readonly RimCorner[] => {
  const flat = loop.map((p) => leafFlat(leaf, p));
  const n = flat.length;
  const directions = flat.map((a, i) => unit2(subtract2(flat[(i + 1) % n]!, a)));
  const corners = flat.map((at, i): RimCorner => {
    const before = (i + n - 1) % n;
    const [d0, d1] = [insets[before]!, insets[i]!];
    const bend = bends[i] ?? null;
    const follows = bend !== null && d0 === 0 && d1 === 0 ? bendPath(leaf, loop[i]!, bend) : [];
    // Past the lip the round runs back along the edge: an ear with no width at its tip, left to the weld.
    const ear =
      follows.length > 0 &&
      (dot2(directionAt(follows[0]!, 0), directions[before]!) < 0 ||
        dot2(directionAt(follows[follows.length - 1]!, 1), directions[i]!) < 0);
    if (follows.length > 0 && !ear)
      return { enter: follows[0]!.from, leave: follows[follows.length - 1]!.to, path: follows };
    const [u, v] = [directions[before]!, directions[i]!];
    const [enter, leave] = meet(at, u, v, d0, d1);
    return { enter, leave, path: distance2(enter, leave) > 1e-12 ? [lineSegment(enter, leave)] : [] };
  });
  corners.forEach(({ leave }, i) => {
    const left = dot2(subtract2(corners[(i + 1) % n]!.enter, leave), directions[i]!);
    if (left < -1e-9) throw tooShort(leaf, distance2(flat[i]!, flat[(i + 1) % n]!), -left);
  });
  return corners;
};

const meet = (at: Vec2, u: Vec2, v: Vec2, d0: number, d1: number): readonly [Vec2, Vec2] => {
  const moved = (d: Vec2, by: number): Vec2 => {
    const normal = left2(d);
    return [at[0] + normal[0] * by, at[1] + normal[1] * by];
  };
  const [a, b] = [moved(u, d0), moved(v, d1)];
  const det = cross2(u, v);
  const inLine = Math.abs(det) < (d0 === d1 ? 1e-9 : IN_LINE) && dot2(u, v) > 0;
  if (inLine) return [a, b];
  const t = cross2(subtract2(b, a), v) / det;
  const p: Vec2 = d0 === 0 && d1 === 0 ? at : [a[0] + u[0] * t, a[1] + u[1] * t];
  return [p, p];
};

/** Where the cylinder of a bend meets the leaf's plane, in the leaf's own axes; empty where it runs along it. */
const bendPath = (leaf: Leaf, at: Vec3, bend: CornerBend): Path => {
  const { before, after, rho, angle } = bend;
  const axis = unit3(cross3(before, after));
  const lean = dot3(leaf.normal, axis);
  if (Math.abs(lean) < 0.05) return [];
  const across = unit3(subtract3(after, scale3(before, dot3(after, before))));
  const centre = add3(scale3(before, rho * Math.tan(angle / 2)), scale3(across, rho));
  const flat = (q: Vec3): Vec2 =>
    leafFlat(leaf, add3(at, add3(q, scale3(axis, -dot3(leaf.normal, q) / lean))));
  const point = (share: number): Vec2 => {
    const turn = share * angle;
    return flat(
      add3(centre, add3(scale3(across, -rho * Math.cos(turn)), scale3(before, -rho * Math.sin(turn)))),
    );
  };
  if (Math.abs(lean) > 1 - 1e-12) {
    const [from, to, middle] = [point(0), point(1), flat(centre)];
    const sense = Math.sign(cross2(subtract2(from, middle), subtract2(to, middle)));
    return [{ kind: 'arc', from, to, centre: middle, radius: rho, sweep: sense * angle } satisfies Arc];
  }
  for (let count = 1; ; count *= 2) {
    const arcs = Array.from({ length: count }, (_, i) => {
      const on = (k: number): Vec2 => point((i + k / 4) / count);
      const arc = arcThrough(on(0), on(2), on(4));
      const off = (p: Vec2): number =>
        arc.kind === 'arc' ? Math.abs(distance2(p, arc.centre) - arc.radius) : 0;
      return { arc, error: Math.max(off(on(1)), off(on(3))) };
    });
    if (count >= MOST_ARCS || arcs.every((a) => a.error < ELLIPSE_ERROR)) return arcs.map((a) => a.arc);
  }
};

const tooShort = (leaf: Leaf, have: number, short: number): PanError =>
  new PanError({
    code: 'shape-fold',
    path: ['pan', 'joints', 'fold'],
    message: `The bends at the ends of an edge of "${leaf.name}" need ${(have + short).toFixed(1)} mm and it is ${have.toFixed(1)} mm long.`,
    value: have,
    limit: have + short,
    unit: 'mm',
    advice: 'Weld one of them, or use a smaller bend radius.',
  });

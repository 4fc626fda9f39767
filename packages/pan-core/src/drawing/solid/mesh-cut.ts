import { earTriangles, pointInPath, polygonArea, polylinePath } from '../../geometry/index.js';
import type { Vec2, Vec3 } from '../../numeric/index.js';
import { type Mesh, requireClosed, roundMesh } from './mesh.js';

/** 0 x, 1 y, 2 z. */
export type Axis = 0 | 1 | 2;

/** A blind hole square to a cut, for a pin that both pieces share; mm. */
export interface PinHole {
  /** In the cut's own axes: the two that follow its axis, in turn. */
  readonly at: Vec2;
  readonly radius: number;
  readonly depth: number;
}

const SIDES = 24;
/** A corner nearer to the plane than this would leave slivers, mm. */
const TOO_NEAR = 2e-3;

/** The two axes that follow, so that the three are right-handed. */
export const othersOf = (axis: Axis): readonly [Axis, Axis] => [
  ((axis + 1) % 3) as Axis,
  ((axis + 2) % 3) as Axis,
];

/** A place for a cut near `at` that passes through no corner of the mesh. */
export const cleanPlace = (mesh: Mesh, axis: Axis, at: number): number => {
  const heights = mesh.points.map((p) => p[axis]).sort((a, b) => a - b);
  for (let k = 0; ; k++) {
    const place = at + (k % 2 === 0 ? 1 : -1) * Math.ceil(k / 2) * 3 * TOO_NEAR;
    if (heights.every((h) => Math.abs(h - place) > TOO_NEAR)) return place;
  }
};

/**
 * A closed mesh cut by a plane square to an axis into the closed part below and the closed part above, the cut faces
 * capped, with the pins' holes in both.
 *
 * @param at a place that `cleanPlace` gave
 */
export const cutMesh = (
  mesh: Mesh,
  axis: Axis,
  at: number,
  pins: readonly PinHole[],
): readonly [below: Mesh, above: Mesh] => [kept(mesh, axis, at, -1, pins), kept(mesh, axis, at, 1, pins)];

const kept = (mesh: Mesh, axis: Axis, at: number, side: 1 | -1, pins: readonly PinHole[]): Mesh => {
  const points: Vec3[] = [...mesh.points];
  const made = new Map<string, number>();
  /** The place where an edge passes the plane, reckoned from its lower number so that both sides agree. */
  const passing = (i: number, j: number): number => {
    const [a, b] = i < j ? [i, j] : [j, i];
    const key = `${a} ${b}`;
    const known = made.get(key);
    if (known !== undefined) return known;
    const [p, q] = [mesh.points[a] as Vec3, mesh.points[b] as Vec3];
    const t = (at - p[axis]) / (q[axis] - p[axis]);
    const cut = [0, 1, 2].map((k) => (k === axis ? at : p[k as Axis] + t * (q[k as Axis] - p[k as Axis])));
    points.push(cut as unknown as Vec3);
    made.set(key, points.length - 1);
    return points.length - 1;
  };
  const inside = (i: number): boolean => side * ((mesh.points[i] as Vec3)[axis] - at) > 0;
  const triangles: (readonly [number, number, number])[] = [];
  const rim = new Map<number, number>();
  for (const triangle of mesh.triangles) {
    const loop = triangle.flatMap((i, k) => {
      const j = triangle[(k + 1) % 3] as number;
      return [...(inside(i) ? [i] : []), ...(inside(i) === inside(j) ? [] : [passing(i, j)])];
    });
    for (let k = 1; k + 1 < loop.length; k++)
      triangles.push([loop[0] as number, loop[k] as number, loop[k + 1] as number]);
    loop.forEach((i, k) => {
      const j = loop[(k + 1) % loop.length] as number;
      // The cap runs the cut's edge the other way.
      if (i >= mesh.points.length && j >= mesh.points.length) rim.set(j, i);
    });
  }
  triangles.push(...caps(points, loopsOf(rim), axis, side, pins));
  return requireClosed(roundMesh(used({ points, triangles })), 'piece of the mock-up');
};

/** A mesh without the points that no triangle stands on. */
const used = ({ points, triangles }: Mesh): Mesh => {
  const places = [...new Set(triangles.flat())].sort((a, b) => a - b);
  const renamed = new Map(places.map((place, i) => [place, i] as const));
  const at = (place: number): number => renamed.get(place) as number;
  return {
    points: places.map((place) => points[place] as Vec3),
    triangles: triangles.map(([i, j, k]) => [at(i), at(j), at(k)] as const),
  };
};

const loopsOf = (next: ReadonlyMap<number, number>): readonly (readonly number[])[] => {
  const done = new Set<number>();
  return [...next.keys()].flatMap((start) => {
    const loop: number[] = [];
    for (let i: number | undefined = start; i !== undefined && !done.has(i); i = next.get(i)) {
      done.add(i);
      loop.push(i);
    }
    return loop.length >= 3 ? [loop] : [];
  });
};

/** Triangles of the cut faces and of the holes in them; adds the holes' points. */
const caps = (
  points: Vec3[],
  loops: readonly (readonly number[])[],
  axis: Axis,
  side: 1 | -1,
  pins: readonly PinHole[],
): readonly (readonly [number, number, number])[] => {
  const [u, v] = othersOf(axis);
  // Seen from outside the piece: from above the part below, and mirrored from below the part above.
  const flat = (p: Vec3): Vec2 => (side < 0 ? [p[u], p[v]] : [p[v], p[u]]);
  const loopFlat = (loop: readonly number[]): Vec2[] => loop.map((i) => flat(points[i] as Vec3));
  const outers = loops.filter((loop) => polygonArea(loopFlat(loop)) > 0);
  const holes = loops.filter((loop) => polygonArea(loopFlat(loop)) < 0);
  const inOuter = (outer: readonly number[], p: Vec2): boolean =>
    pointInPath(polylinePath(loopFlat(outer), true), p) === 'inside';
  const first = points[loops[0]?.[0] ?? 0] as Vec3;
  const drilled = pins.map((pin) => drill(points, pin, axis, first[axis], side));
  return [
    ...outers.flatMap((outer) => {
      const own = [...holes, ...drilled.map((hole) => hole.rim)].filter((loop) =>
        inOuter(outer, flat(points[loop[0] as number] as Vec3)),
      );
      return earTriangles(points.map(flat), [outer, ...own]);
    }),
    ...drilled.flatMap((hole) => hole.triangles),
  ];
};

/** A blind hole: its rim, clockwise seen from outside, and the triangles of its wall and floor. */
const drill = (
  points: Vec3[],
  { at, radius, depth }: PinHole,
  axis: Axis,
  height: number,
  side: 1 | -1,
): {
  readonly rim: readonly number[];
  readonly triangles: readonly (readonly [number, number, number])[];
} => {
  const [u, v] = othersOf(axis);
  const place = (a: number, r: number, h: number): number => {
    const p: [number, number, number] = [0, 0, 0];
    p[axis] = h;
    p[u] = at[0] + r * Math.cos(a);
    p[v] = at[1] + r * Math.sin(a);
    points.push(p);
    return points.length - 1;
  };
  const floor = height + side * depth;
  const angles = Array.from({ length: SIDES }, (_, i) => (side * 2 * Math.PI * i) / SIDES);
  const rim = angles.map((a) => place(a, radius, height));
  const foot = angles.map((a) => place(a, radius, floor));
  const middle = place(0, 0, floor);
  return {
    rim,
    triangles: rim.flatMap((r, i): (readonly [number, number, number])[] => {
      const k = (i + 1) % SIDES;
      const [r2, f, f2] = [rim[k] as number, foot[i] as number, foot[k] as number];
      return [
        [r2, r, f],
        [r2, f, f2],
        [f2, f, middle],
      ];
    }),
  };
};

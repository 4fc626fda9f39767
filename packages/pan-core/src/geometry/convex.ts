import { cross3, dot3, subtract3, type Vec3 } from '../numeric/index.js';
import type { PlaneTable, SidedPlane } from './plane.js';

/** A flat face of a convex cell; `loop` runs counter-clockwise seen from outside. */
export interface CellFace<Tag> extends SidedPlane {
  readonly loop: readonly Vec3[];
  readonly tag: Tag;
}

/** A convex polyhedron by its faces. */
export interface ConvexCell<Tag> {
  readonly faces: readonly CellFace<Tag>[];
}

/** A point nearer than this to a cutting plane counts as on it, mm: a thousand rounding errors of a metre. */
const ON_PLANE = 1e-10;
/** Pieces thinner than this are rounding, not space, mm³. */
export const NO_VOLUME = 1e-7;

/** Area vector of a loop: half the sum of cross products, pointing to the side it runs counter-clockwise from. */
export const areaVector = (loop: readonly Vec3[]): Vec3 => {
  const o = loop[0] as Vec3;
  let [x, y, z] = [0, 0, 0];
  for (let i = 1; i + 1 < loop.length; i++) {
    const c = cross3(subtract3(loop[i] as Vec3, o), subtract3(loop[i + 1] as Vec3, o));
    x += c[0] / 2;
    y += c[1] / 2;
    z += c[2] / 2;
  }
  return [x, y, z];
};

/** Volume by the divergence theorem, from the cell's own first vertex so that far-off cells lose no digits. */
export const cellVolume = (cell: ConvexCell<unknown>): number => {
  const o = cell.faces[0]?.loop[0];
  if (o === undefined) return 0;
  let six = 0;
  for (const face of cell.faces) {
    const a = subtract3(face.loop[0] as Vec3, o);
    for (let i = 1; i + 1 < face.loop.length; i++) {
      const b = subtract3(face.loop[i] as Vec3, o);
      const c = subtract3(face.loop[i + 1] as Vec3, o);
      six += dot3(a, cross3(b, c));
    }
  }
  return six / 6;
};

/** Makes a cell from loops, dropping points that repeat and faces that have collapsed to a line. */
export const cellFromLoops = <Tag>(faces: readonly CellFace<Tag>[]): ConvexCell<Tag> => ({
  faces: faces
    .map((f) => ({
      ...f,
      loop: f.loop.filter((p, i) => !samePoint(p, f.loop[(i + 1) % f.loop.length] as Vec3)),
    }))
    .filter((f) => f.loop.length >= 3),
});

const samePoint = (a: Vec3, b: Vec3): boolean => a[0] === b[0] && a[1] === b[1] && a[2] === b[2];

/**
 * The part of a cell behind a sided plane (where side·(n·p − offset) ≤ 0), or null when there is none.
 * The new face lies on that plane with the given tag and looks to the plane's side.
 */
export const clipCell = <Tag>(
  table: PlaneTable,
  cell: ConvexCell<Tag>,
  cut: SidedPlane,
  tag: Tag,
): ConvexCell<Tag> | null => {
  const equation = table.planes[cut.plane];
  if (equation === undefined) return null;
  const height = (p: Vec3): number => {
    const d = cut.side * (dot3(equation.normal, p) - equation.offset);
    return Math.abs(d) < ON_PLANE ? 0 : d;
  };
  let above = 0;
  let below = 0;
  for (const f of cell.faces)
    for (const p of f.loop) {
      const d = height(p);
      if (d > 0) above++;
      else if (d < 0) below++;
    }
  if (below === 0) return null;
  if (above === 0) return cell;
  const faces: CellFace<Tag>[] = [];
  const rim: [Vec3, Vec3][] = [];
  for (const face of cell.faces) {
    const kept: Vec3[] = [];
    const onPlane: Vec3[] = [];
    for (let i = 0; i < face.loop.length; i++) {
      const p = face.loop[i] as Vec3;
      const q = face.loop[(i + 1) % face.loop.length] as Vec3;
      const [dp, dq] = [height(p), height(q)];
      if (dp <= 0) kept.push(p);
      if (dp === 0) onPlane.push(p);
      if ((dp < 0 && dq > 0) || (dp > 0 && dq < 0)) {
        const m = crossing(p, q, dp, dq);
        kept.push(m);
        onPlane.push(m);
      }
    }
    if (kept.length >= 3 && onPlane.length < kept.length) {
      faces.push({ ...face, loop: kept });
      if (onPlane.length === 2) rim.push(rimEdge(kept, onPlane[0] as Vec3, onPlane[1] as Vec3));
    }
  }
  const loop = chainRim(rim);
  if (loop.length >= 3) faces.push({ ...cut, loop, tag });
  return { faces };
};

/** The same edge gives the same point from either of its faces, digit for digit. */
const crossing = (p: Vec3, q: Vec3, dp: number, dq: number): Vec3 => {
  const [a, b, da, db] = before(p, q) ? [p, q, dp, dq] : [q, p, dq, dp];
  const t = da / (da - db);
  const mix = (i: 0 | 1 | 2): number => (a[i] === b[i] ? a[i] : a[i] + t * (b[i] - a[i]));
  return [mix(0), mix(1), mix(2)];
};

const before = (p: Vec3, q: Vec3): boolean =>
  p[0] !== q[0] ? p[0] < q[0] : p[1] !== q[1] ? p[1] < q[1] : p[2] < q[2];

/** The edge as the new face must run it: against the kept face's own sense. */
const rimEdge = (kept: readonly Vec3[], a: Vec3, b: Vec3): [Vec3, Vec3] => {
  const i = kept.indexOf(a);
  return kept[(i + 1) % kept.length] === b ? [b, a] : [a, b];
};

const chainRim = (edges: readonly [Vec3, Vec3][]): readonly Vec3[] => {
  const next = new Map<string, Vec3>();
  for (const [from, to] of edges) next.set(from.join(), to);
  const start = edges[0]?.[0];
  if (start === undefined) return [];
  const loop: Vec3[] = [start];
  let at = next.get(start.join());
  while (at !== undefined && !samePoint(at, start) && loop.length <= edges.length) {
    loop.push(at);
    at = next.get(at.join());
  }
  return loop;
};

/** What is left of a cell when a convex solid, given by its outward-looking planes, is taken out of it. */
export const subtractConvex = <Tag>(
  table: PlaneTable,
  cell: ConvexCell<Tag>,
  solid: readonly SidedPlane[],
  tag: Tag,
): readonly ConvexCell<Tag>[] => {
  const pieces: ConvexCell<Tag>[] = [];
  let rest: ConvexCell<Tag> | null = cell;
  for (const face of solid) {
    if (rest === null) break;
    const outside: ConvexCell<Tag> | null = clipCell(
      table,
      rest,
      { plane: face.plane, side: face.side === 1 ? -1 : 1 },
      tag,
    );
    if (outside !== null && cellVolume(outside) > NO_VOLUME) pieces.push(outside);
    rest = clipCell(table, rest, face, tag);
  }
  return rest === null || cellVolume(rest) <= NO_VOLUME ? [cell] : pieces;
};

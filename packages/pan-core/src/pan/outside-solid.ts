import {
  areaVector,
  type CellFace,
  type ConvexCell,
  cellFromLoops,
  clipCell,
  type PlaneTable,
  planeThrough,
} from '../geometry/index.js';
import { dot3, subtract3, type Vec3 } from '../numeric/index.js';
import type { OuterRole, OuterSolid } from './panel.js';

/** A convex piece of the outside while it is being cut; each face carries its name. */
export type Piece = ConvexCell<string>;

export interface NamedLoop {
  readonly loop: readonly Vec3[];
  readonly name: string;
}

/** Faces that lie inside the pan, where pieces meet; never the nearest thing to anything. */
export const INSIDE = 'inside';

/** A convex piece from its face loops in either sense. */
export const pieceFromLoops = (table: PlaneTable, loops: readonly NamedLoop[]): Piece => {
  const points = loops.flatMap((f) => f.loop);
  const middle = [0, 1, 2].map((k) => points.reduce((sum, p) => sum + p[k as 0 | 1 | 2], 0) / points.length);
  const centre: Vec3 = [middle[0]!, middle[1]!, middle[2]!];
  const faces = loops.flatMap(({ loop, name }): readonly CellFace<string>[] => {
    const distinct = loop.filter((p, i) => !same(p, loop[(i + 1) % loop.length]!));
    if (distinct.length < 3) return [];
    const normal = areaVector(distinct);
    if (dot3(normal, normal) < 1e-18) return [];
    const outward = dot3(normal, subtract3(distinct[0]!, centre)) >= 0;
    const turned = outward ? distinct : [...distinct].reverse();
    const out: Vec3 = outward ? normal : [-normal[0], -normal[1], -normal[2]];
    return [{ ...planeThrough(table, out, turned[0]!), loop: turned, tag: name }];
  });
  return cellFromLoops(faces);
};

const same = (a: Vec3, b: Vec3): boolean => a[0] === b[0] && a[1] === b[1] && a[2] === b[2];

/** A prism on a flat convex base, from `base` to `base` moved; names of the two ends and of the sides. */
export const prismPiece = (
  table: PlaneTable,
  base: readonly Vec3[],
  end: readonly Vec3[],
  names: { readonly base: string; readonly end: string; readonly side: (i: number) => string },
): Piece =>
  pieceFromLoops(table, [
    { loop: base, name: names.base },
    { loop: end, name: names.end },
    ...base.map((p, i) => {
      const next = (i + 1) % base.length;
      return { loop: [p, base[next]!, end[next]!, end[i]!], name: names.side(i) };
    }),
  ]);

/** The part of a piece behind the plane through `point` looking along `outward`. */
export const cutPiece = (
  table: PlaneTable,
  piece: Piece,
  outward: Vec3,
  point: Vec3,
  name: string,
): Piece | null => clipCell(table, piece, planeThrough(table, outward, point), name);

/** A finished piece with its corners numbered. */
export const outerSolid = (name: string, role: OuterRole, piece: Piece): OuterSolid => {
  const vertices: Vec3[] = [];
  const numbers = new Map<string, number>();
  const faces = piece.faces.map((face) =>
    face.loop.map((p) => {
      const key = p.join();
      const known = numbers.get(key);
      if (known !== undefined) return known;
      numbers.set(key, vertices.length);
      vertices.push(p);
      return vertices.length - 1;
    }),
  );
  return { name, role, vertices, faces, faceNames: piece.faces.map((f) => f.tag) };
};

/** How many sides a polygon around a circle needs so that no corner stands more than `slack` beyond it. */
export const sidesAround = (radius: number, slack: number): number =>
  Math.max(8, Math.ceil(Math.PI / Math.acos(radius / (radius + slack))));

/** A regular polygon around a circle about a line along z, counter-clockwise from above. */
export const roundBase = (centre: Vec3, radius: number, count: number): readonly Vec3[] => {
  const reach = radius / Math.cos(Math.PI / count);
  return Array.from({ length: count }, (_, i): Vec3 => {
    const t = (2 * Math.PI * (i + 0.5)) / count;
    return [centre[0] + reach * Math.cos(t), centre[1] + reach * Math.sin(t), centre[2]];
  });
};

/** A convex solid of stacked rings with as many corners each, top to bottom; each ring counter-clockwise from above. */
export const stackedSolid = (
  name: string,
  role: OuterRole,
  rings: readonly (readonly Vec3[])[],
): OuterSolid => {
  const n = rings[0]!.length;
  const round = Array.from({ length: n }, (_, i) => i);
  const bottom = (rings.length - 1) * n;
  const bands = rings.slice(1).flatMap((_, r) =>
    round.map((i) => {
      const next = (i + 1) % n;
      return [r * n + i, (r + 1) * n + i, (r + 1) * n + next, r * n + next];
    }),
  );
  const faces = [round, [...round].reverse().map((i) => bottom + i), ...bands];
  return { name, role, vertices: rings.flat(), faces, faceNames: faces.map(() => name) };
};

import { dot3, type Vec3 } from '../../numeric/index.js';
import { isSheet, leastShift, type Skin, type SkinParts, type SkinPiece } from '../../weld/index.js';
import { type Mesh, meshOfLoops, requireClosed, roundMesh } from './mesh.js';

/** A part of the finished pan as a solid in its place, pan axes. */
export interface InPlace {
  readonly name: string;
  readonly mesh: Mesh;
}

/**
 * Each sheet part of the pan as it stands when folded: its inside faces, the same moved out by the
 * thickness with folds mitred, and its edges square. At outward corners neighbours touch along their inside
 * edges; at inward ones they overlap, where the flat part stops short by the butt.
 */
export const sheetShells = (
  skin: Skin,
  { keyOf, nameOf }: SkinParts,
  thickness: number,
): readonly InPlace[] => {
  const byPart = new Map<string, SkinPiece[]>();
  for (const piece of skin.pieces) {
    if (!isSheet(piece)) continue;
    const key = keyOf(piece);
    byPart.set(key, [...(byPart.get(key) ?? []), piece]);
  }
  return [...byPart].map(([key, pieces]) => ({
    name: nameOf(key),
    mesh: shell(skin, pieces, thickness, nameOf(key)),
  }));
};

const shell = (skin: Skin, pieces: readonly SkinPiece[], thickness: number, name: string): Mesh => {
  const outer = new Map<number, number>();
  const points: Vec3[] = [...skin.points];
  const normals = new Map<number, Vec3[]>();
  for (const piece of pieces) {
    for (const place of piece.loop) {
      const known = normals.get(place) ?? [];
      normals.set(place, known);
      if (!known.some((n) => dot3(n, piece.normal) > 1 - 1e-12)) known.push(piece.normal);
    }
  }
  for (const [place, facing] of normals) {
    const p = skin.points[place] as Vec3;
    const s = leastShift(facing.map((normal) => ({ normal, by: thickness })));
    outer.set(place, points.length);
    points.push([p[0] + s[0], p[1] + s[1], p[2] + s[2]]);
  }
  const out = (place: number): number => outer.get(place) as number;
  return requireClosed(roundMesh(meshOfLoops(points, shellLoops(pieces, out))), `part "${name}"`);
};

/** Pieces of sheet as a closed shell: their own faces turned over, the same farther out, and a rim round every edge. */
export const shellLoops = (
  pieces: readonly Pick<SkinPiece, 'loop'>[],
  out: (place: number) => number,
): readonly (readonly number[])[] => {
  const after = (loop: readonly number[], i: number): number => loop[(i + 1) % loop.length] as number;
  const edges = new Set(pieces.flatMap(({ loop }) => loop.map((a, i) => `${a} ${after(loop, i)}`)));
  return pieces.flatMap(({ loop }) => [
    [...loop].reverse(),
    loop.map(out),
    ...loop.flatMap((a, i) => {
      const b = after(loop, i);
      // An edge that no other piece runs the other way is an edge of the sheet.
      return edges.has(`${b} ${a}`) ? [] : [[a, b, out(b), out(a)]];
    }),
  ]);
};

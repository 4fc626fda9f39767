import { dot3, type Vec3 } from '../numeric/index.js';
import { leastShift, type Skin, type SkinParts, type SkinPiece } from '../weld/index.js';
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
    if (piece.owner === 'lid' || piece.owner === 'flange' || piece.owner === 'block') continue;
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
  const edges = new Set<string>();
  for (const { loop } of pieces) {
    loop.forEach((a, i) => {
      edges.add(`${a} ${loop[(i + 1) % loop.length]}`);
    });
  }
  const loops: number[][] = [];
  for (const { loop } of pieces) {
    loops.push([...loop].reverse(), loop.map(out));
    loop.forEach((a, i) => {
      const b = loop[(i + 1) % loop.length] as number;
      // An edge that no other piece of the part runs the other way is an edge of the sheet.
      if (!edges.has(`${b} ${a}`)) loops.push([a, b, out(b), out(a)]);
    });
  }
  return requireClosed(roundMesh(meshOfLoops(points, loops)), `part "${name}"`);
};

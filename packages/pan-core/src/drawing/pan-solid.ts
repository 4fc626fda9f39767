import { dot3, type Vec3 } from '../numeric/index.js';
import type { Skin } from '../weld/index.js';
import { leastShift } from './least-shift.js';
import { type Mesh, meshOfLoops, requireClosed, roundMesh } from './mesh.js';

/** The room inside the pan below the rail as one closed solid, baffles left out. */
export const insideSolid = (skin: Skin): Mesh =>
  requireClosed(
    roundMesh(
      meshOfLoops(
        skin.points,
        skin.pieces.map((piece) => piece.loop),
      ),
    ),
    'inside of the pan',
  );

/**
 * The outside of the pan as one closed solid: every sheet face moved out by the thickness, the rail plane
 * where it is, edges mitred.
 *
 * Where more than three faces meet at a point no single point lies a thickness from all of them; the
 * nearest in the sense of least squares is taken.
 */
export const outsideSolid = (skin: Skin, thickness: number): Mesh => {
  const normals = skin.points.map((): Vec3[] => []);
  const lid = new Set<number>();
  for (const piece of skin.pieces) {
    for (const place of piece.loop) {
      if (piece.owner === 'lid') lid.add(place);
      else if (!normals[place]?.some((n) => dot3(n, piece.normal) > 1 - 1e-12))
        normals[place]?.push(piece.normal);
    }
  }
  const points = skin.points.map((p, place): Vec3 => {
    const rows = (normals[place] ?? []).map((normal) => ({ normal, by: thickness }));
    const shift = leastShift(lid.has(place) ? [...rows, { normal: [0, 0, 1], by: 0 }] : rows);
    return [p[0] + shift[0], p[1] + shift[1], lid.has(place) ? p[2] : p[2] + shift[2]];
  });
  return requireClosed(
    roundMesh(
      meshOfLoops(
        points,
        skin.pieces.map((piece) => piece.loop),
      ),
    ),
    'outside of the pan',
  );
};

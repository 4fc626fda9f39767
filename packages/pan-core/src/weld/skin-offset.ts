import { dot3, type Vec3 } from '../numeric/index.js';
import { leastShift } from './least-shift.js';
import type { Skin } from './skin.js';

/**
 * A skin's points, each moved until every sheet face on it is `by` mm out from where it was; less than 0 is
 * into the oil. A point of the rail plane goes to `down` mm below it.
 *
 * Where more than three faces meet at a point no single point lies that far from all of them; the nearest in
 * the sense of least squares is taken.
 */
export const skinMovedOut = (skin: Skin, by: number, down = 0): readonly Vec3[] => {
  const normals = skin.points.map((): Vec3[] => []);
  const lid = new Set<number>();
  for (const piece of skin.pieces) {
    for (const place of piece.loop) {
      if (piece.owner === 'lid') lid.add(place);
      else if (!normals[place]?.some((n) => dot3(n, piece.normal) > 1 - 1e-12))
        normals[place]?.push(piece.normal);
    }
  }
  return skin.points.map((p, place): Vec3 => {
    const rows = (normals[place] ?? []).map((normal) => ({ normal, by }));
    const shift = leastShift(lid.has(place) ? [...rows, { normal: [0, 0, 1], by: -down }] : rows);
    return [p[0] + shift[0], p[1] + shift[1], lid.has(place) ? p[2] - down : p[2] + shift[2]];
  });
};

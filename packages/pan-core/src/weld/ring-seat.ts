import { add3, cross3, dot3, scale3, subtract3, unit3, type Vec2, type Vec3 } from '../numeric/index.js';
import { plainLine, type SeamLine } from './seam-line.js';
import { isOnPiece, isSheet, type Skin, type SkinPiece } from './skin.js';

/** Where a bung sits: a point of the pan's inside face and that face's normal, out of the oil. */
export interface Seat {
  readonly at: Vec3;
  readonly normal: Vec3;
}

/** Chords of a whole turn: of a 50 mm bung within 0.05 mm. */
const CHORDS = 72;

/** Beyond an edge by rounding alone, mm. */
const SAME = 1e-6;

/** The lowest sheet under a place of the plan; null where there is none. */
export const seatUnder = (skin: Skin, [x, y]: Vec2): Seat | null => {
  const found = skin.pieces.filter(isSheet).flatMap((piece): readonly Seat[] => {
    const { normal } = piece;
    if (normal[2] > -1e-6) return [];
    const first = firstOf(skin, piece);
    const z = first[2] - (normal[0] * (x - first[0]) + normal[1] * (y - first[1])) / normal[2];
    const at: Vec3 = [x, y, z];
    return isOnPiece(skin, piece, at, SAME) ? [{ at, normal }] : [];
  });
  return found.reduce<Seat | null>(
    (low, seat) => (low === null || seat.at[2] < low.at[2] ? seat : low),
    null,
  );
};

/** The sheet nearest to a point, no farther than `within` mm; null where there is none. */
export const seatNear = (skin: Skin, p: Vec3, within: number): Seat | null => {
  const found = skin.pieces
    .filter(isSheet)
    .flatMap((piece): readonly (Seat & { readonly away: number })[] => {
      const { normal } = piece;
      const above = dot3(normal, subtract3(p, firstOf(skin, piece)));
      const at = subtract3(p, scale3(normal, above));
      return Math.abs(above) <= within && isOnPiece(skin, piece, at, SAME)
        ? [{ at, normal, away: Math.abs(above) }]
        : [];
    });
  const best = found.reduce<(typeof found)[number] | null>(
    (a, b) => (a === null || b.away < a.away ? b : a),
    null,
  );
  return best === null ? null : { at: best.at, normal: best.normal };
};

/** The round edge of a bung on the outside of the sheet. */
export const ringLine = ({ at, normal }: Seat, radius: number, thickness: number): SeamLine => {
  const centre = add3(at, scale3(normal, thickness));
  const aside: Vec3 = Math.abs(normal[0]) < 0.9 ? [1, 0, 0] : [0, 1, 0];
  const u = unit3(cross3(normal, aside));
  const v = cross3(normal, u);
  return plainLine(
    Array.from({ length: CHORDS + 1 }, (_, i) => {
      const turn = (2 * Math.PI * (i % CHORDS)) / CHORDS;
      return add3(centre, add3(scale3(u, radius * Math.cos(turn)), scale3(v, radius * Math.sin(turn))));
    }),
  );
};

const firstOf = ({ points }: Skin, { loop }: SkinPiece): Vec3 => points[loop[0] as number] as Vec3;

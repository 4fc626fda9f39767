import { add3, dot3, scale3, subtract3, type Vec2, type Vec3 } from '../numeric/index.js';
import type { Plate } from '../pan/index.js';
import { plainLine, type SeamLine } from './seam-line.js';
import type { Skin, SkinPiece } from './skin.js';

/** A plate's edge nearer than this to the sheet is laid against it, mm; weeps stand farther off. */
const AGAINST = 0.5;

/** A plate's edges that lie against the pan's sheet, pan axes. */
export const contactLines = (plate: Plate, skin: Skin): readonly SeamLine[] => {
  const sheet = skin.pieces.filter((piece) => piece.owner !== 'lid');
  return plate.outlines.flatMap((outline) =>
    outline.flatMap((a, i): readonly SeamLine[] => {
      const b = outline[(i + 1) % outline.length] as Vec2;
      const middle = placeOf(plate, [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2]);
      return sheet.some((piece) => against(piece, skin, middle))
        ? [plainLine([placeOf(plate, a), placeOf(plate, b)])]
        : [];
    }),
  );
};

const placeOf = (plate: Plate, [s, t]: Vec2): Vec3 =>
  add3(plate.origin, add3(scale3(plate.u, s), scale3(plate.v, t)));

const against = (piece: SkinPiece, skin: Skin, p: Vec3): boolean => {
  const loop = piece.loop.map((place) => skin.points[place] as Vec3);
  const first = loop[0] as Vec3;
  if (Math.abs(dot3(piece.normal, subtract3(p, first))) > AGAINST) return false;
  return loop.every((a, i) => {
    const b = loop[(i + 1) % loop.length] as Vec3;
    const [ux, uy, uz] = subtract3(b, a);
    const [rx, ry, rz] = subtract3(p, a);
    const turn = dot3(piece.normal, [uy * rz - uz * ry, uz * rx - ux * rz, ux * ry - uy * rx]);
    return turn >= -AGAINST * Math.hypot(ux, uy, uz);
  });
};

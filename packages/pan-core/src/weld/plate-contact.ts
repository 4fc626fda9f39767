import { framePoint } from '../geometry/index.js';
import { add3, dot3, scale3, subtract3, type Vec2, type Vec3 } from '../numeric/index.js';
import type { Plate } from '../pan/index.js';
import { plainLine, type SeamLine } from './seam-line.js';
import { isOnPiece, type Skin, type SkinPiece } from './skin.js';

/** A plate's edge nearer than this to the sheet is laid against it, mm; weeps stand farther off. */
const AGAINST = 0.5;

/** A plate's edges that lie against the pan's sheet, pan axes. */
export const contactLines = (plate: Plate, skin: Skin): readonly SeamLine[] => {
  const sheet = skin.pieces.filter((piece) => piece.owner !== 'lid');
  return plate.outlines.flatMap((outline) =>
    outline.flatMap((a, i): readonly SeamLine[] => {
      const b = outline[(i + 1) % outline.length] as Vec2;
      const middle = placeOnPlate(plate, [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2]);
      return sheet.some((piece) => against(piece, skin, middle))
        ? [plainLine([placeOnPlate(plate, a), placeOnPlate(plate, b)])]
        : [];
    }),
  );
};

/** A place of a plate in the pan, `out` mm from its own plane along its thickness. */
export const placeOnPlate = (plate: Plate, at: Vec2, out = 0): Vec3 =>
  framePoint({ ...plate, origin: add3(plate.origin, scale3(plate.normal, out)) }, at);

const against = (piece: SkinPiece, skin: Skin, p: Vec3): boolean => {
  const first = skin.points[piece.loop[0] as number] as Vec3;
  return Math.abs(dot3(piece.normal, subtract3(p, first))) <= AGAINST && isOnPiece(skin, piece, p, AGAINST);
};

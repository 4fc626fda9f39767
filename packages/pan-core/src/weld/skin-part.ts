import { dot3, type Vec3 } from '../numeric/index.js';
import { type Panel, type PanModel, panelsOf } from '../pan/index.js';
import { nearestRun, notchPartNames, wingPartName, wingPieceOf } from '../sheet/index.js';
import type { Skin, SkinPiece } from './skin.js';

const UPRIGHT = 1 - 1e-9;

/** What a pan's skin is cut from: parts, or faces of parts. */
export interface SkinParts {
  /** A key of its own for each, whatever two wings are called. */
  readonly keyOf: (piece: SkinPiece) => string;
  /** What a seam calls it. */
  readonly nameOf: (key: string) => string;
  /** The name of the part that carries it. */
  readonly partOf: (key: string) => string;
  /** Whether two keys are folded to each other instead of welded. */
  readonly folded: (first: string, second: string) => boolean;
}

export const FLANGE_KEY = 'flange';

/** The flat parts that make the pan's skin. */
export const skinParts = (model: PanModel, skin: Skin): SkinParts => {
  const bellyOf = bellyStrip(model, skin);
  const plates = panelsOf(model).filter((panel) => panel.owner === 'notch');
  const plateNames = notchPartNames(model.design, plates);
  const notchOf = (piece: SkinPiece): number => {
    const at = middle(skin, piece);
    return plates.findIndex(
      (plate) =>
        plate.index === piece.index && dot3(plate.normal, piece.normal) > UPRIGHT && isWithin(plate, at),
    );
  };
  const describe = (piece: SkinPiece): readonly [key: string, name: string] => {
    const { wings } = model.design.pan;
    switch (piece.owner) {
      case 'lid':
      case 'flange':
      case 'block':
        return [FLANGE_KEY, 'flange'];
      case 'wing': {
        const wing = wings[piece.index];
        if (wing === undefined) return [`wing ${piece.index}`, 'wing'];
        const [x] = middle(skin, piece);
        const part = wingPieceOf(model.design, model.profile, wing, piece.normal, x);
        return [`wing ${piece.index} ${part}`, wingPartName(wing, part)];
      }
      case 'notch': {
        const plate = notchOf(piece);
        return [`notch ${plate}`, plateNames[plate] ?? 'notch'];
      }
      case 'belly': {
        const name = bellyOf(piece);
        return [name, name];
      }
      default:
        return [piece.owner, piece.owner];
    }
  };
  const names = new Map(skin.pieces.map(describe));
  const nameOf = (key: string): string => names.get(key) ?? key;
  return { keyOf: (piece) => describe(piece)[0], nameOf, partOf: nameOf, folded: () => false };
};

const middle = (skin: Skin, piece: SkinPiece): Vec3 => {
  const points = piece.loop.map((place) => skin.points[place] as Vec3);
  const mean = (axis: 0 | 1 | 2): number => points.reduce((sum, p) => sum + p[axis], 0) / points.length;
  return [mean(0), mean(1), mean(2)];
};

/** Whether a point of a panel's plane lies in the box around the panel. */
const isWithin = ({ loops }: Panel, at: Vec3): boolean => {
  const points = loops.flat();
  return ([0, 1, 2] as const).every((axis) => {
    const along = points.map((p) => p[axis]);
    return at[axis] >= Math.min(...along) - 1e-6 && at[axis] <= Math.max(...along) + 1e-6;
  });
};

/** Strips of a belly welded at some corners are counted from the rear, its runs from the front. */
const bellyStrip = ({ profile }: PanModel, skin: Skin): ((piece: SkinPiece) => string) => {
  const { corners, sharp } = profile;
  const welds = corners.flatMap((corner, i) => (!corner.folded && Math.abs(corner.turn) > 1e-12 ? [i] : []));
  if (welds.length === 0) return () => 'belly';
  return (piece) => {
    const [x, , z] = middle(skin, piece);
    const at = nearestRun(sharp, [x, z]);
    return `belly ${1 + welds.filter((w) => w >= at).length} of ${welds.length + 1}`;
  };
};

import type { Vec2, Vec3 } from '../numeric/index.js';
import type { PanModel } from '../pan/index.js';
import type { Skin, SkinPiece } from './skin.js';

const UPRIGHT = 1 - 1e-9;

/** The flat parts that a pan's skin is cut from. */
export interface SkinParts {
  /** A key of its own for each part, whatever two wings are called. */
  readonly keyOf: (piece: SkinPiece) => string;
  /** The name the part carries in the default make-up. */
  readonly nameOf: (key: string) => string;
}

export const FLANGE_KEY = 'flange';

export const skinParts = (model: PanModel, skin: Skin): SkinParts => {
  const bellyOf = bellyStrip(model, skin);
  const describe = (piece: SkinPiece): readonly [key: string, name: string] => {
    const { wings, notches } = model.design.pan;
    switch (piece.owner) {
      case 'lid':
      case 'flange':
      case 'block':
        return [FLANGE_KEY, 'flange'];
      case 'wing': {
        const across = Math.abs(piece.normal[0]) > UPRIGHT;
        const end = across ? ` ${piece.normal[0] > 0 ? 'front' : 'rear'} cap` : '';
        return [`wing ${piece.index}${end}`, `${wings[piece.index]?.name ?? 'wing'}${end}`];
      }
      case 'notch': {
        const way = facing(piece.normal);
        return [`notch ${piece.index} ${way}`, `${notches[piece.index]?.name ?? 'notch'} ${way}`];
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
  return { keyOf: (piece) => describe(piece)[0], nameOf: (key) => names.get(key) ?? key };
};

/** Strips of a belly welded at some corners are counted from the rear, its runs from the front. */
const bellyStrip = ({ profile }: PanModel, skin: Skin): ((piece: SkinPiece) => string) => {
  const { corners, sharp } = profile;
  const welds = corners.flatMap((corner, i) => (!corner.folded && Math.abs(corner.turn) > 1e-12 ? [i] : []));
  if (welds.length === 0) return () => 'belly';
  return (piece) => {
    const at = nearestRun(sharp, centreOf(piece.loop.map((place) => skin.points[place] as Vec3)));
    return `belly ${1 + welds.filter((w) => w >= at).length} of ${welds.length + 1}`;
  };
};

const centreOf = (loop: readonly Vec3[]): Vec2 => [
  loop.reduce((sum, p) => sum + p[0], 0) / loop.length,
  loop.reduce((sum, p) => sum + p[2], 0) / loop.length,
];

const nearestRun = (sharp: readonly Vec2[], p: Vec2): number => {
  const away = sharp.slice(1).map((b, i) => distanceToRun(p, sharp[i] as Vec2, b));
  return away.indexOf(Math.min(...away));
};

const distanceToRun = (p: Vec2, a: Vec2, b: Vec2): number => {
  const [ux, uz] = [b[0] - a[0], b[1] - a[1]];
  const t = ((p[0] - a[0]) * ux + (p[1] - a[1]) * uz) / (ux * ux + uz * uz);
  const s = Math.min(1, Math.max(0, t));
  return Math.hypot(p[0] - a[0] - s * ux, p[1] - a[1] - s * uz);
};

/** Which way a notch's plate looks, in a builder's words; its normal points out of the oil. */
const facing = ([x, y, z]: Vec3): string => {
  const [ax, ay, az] = [Math.abs(x), Math.abs(y), Math.abs(z)];
  if (az >= ax && az >= ay) return z < 0 ? 'roof' : 'floor';
  if (ax >= ay) return x > 0 ? 'rear plate' : 'front plate';
  return y > 0 ? 'right plate' : 'left plate';
};

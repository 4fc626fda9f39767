import type { Vec2, Vec3 } from '../numeric/index.js';
import type { PanModel } from '../pan/index.js';
import type { Skin, SkinPiece } from './skin.js';
import type { PartOf } from './skin-seams.js';

const UPRIGHT = 1 - 1e-9;

/** Which flat part each piece of skin is cut from, by the names the parts carry in the default make-up. */
export const partNames = (model: PanModel, skin: Skin): PartOf => {
  const { wings, notches } = model.design.pan;
  const { corners, sharp } = model.profile;
  const welds = corners.flatMap((corner, i) => (!corner.folded && Math.abs(corner.turn) > 1e-12 ? [i] : []));
  const belly = (piece: SkinPiece): string => {
    if (welds.length === 0) return 'belly';
    const at = nearestRun(sharp, centreOf(piece.loop.map((place) => skin.points[place] as Vec3)));
    // Strips are counted from the rear, runs from the front.
    return `belly ${1 + welds.filter((w) => w >= at).length} of ${welds.length + 1}`;
  };
  return (piece) => {
    switch (piece.owner) {
      case 'lid':
      case 'flange':
      case 'block':
        return 'flange';
      case 'wing': {
        const name = `wing "${wings[piece.index]?.name ?? ''}"`;
        if (Math.abs(piece.normal[0]) < UPRIGHT) return `${name} strip`;
        return `${name} ${piece.normal[0] > 0 ? 'front' : 'rear'} cap`;
      }
      case 'notch':
        return `notch "${notches[piece.index]?.name ?? ''}" ${facing(piece.normal)}`;
      case 'belly':
        return belly(piece);
      default:
        return piece.owner;
    }
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

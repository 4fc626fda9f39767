import type { Design, Wing } from '../design/index.js';
import type { Vec3 } from '../numeric/index.js';
import type { Panel, Profile } from '../pan/index.js';
import { wingFrame } from './wing-frame.js';

/** The pieces a wing is made of; one strip where its floor is flat, else wall with top and a floor of its own. */
export type WingPiece = 'strip' | 'wall and top' | 'floor' | 'rear cap' | 'front cap';

/** What a part is called on the cut list, in the weld order and as a file: one name everywhere. */
export const wingPartName = (wing: Wing, piece: WingPiece): string => `${wing.name} ${piece}`;

/** Which piece of its wing a flat face belongs to, by its normal out of the oil and the x of its middle. */
export const wingPieceOf = (
  design: Design,
  profile: Profile,
  wing: Wing,
  normal: Vec3,
  x: number,
): WingPiece => {
  if (Math.abs(x - wing.rear) < NEAR && normal[0] < -UPRIGHT) return 'rear cap';
  if (Math.abs(x - wing.front) < NEAR && normal[0] > UPRIGHT) return 'front cap';
  if (wingFrame(design, profile, wing).oneFloor) return 'strip';
  // Its outer wall stands upright across the car, and its top looks up.
  return normal[2] < -NEAR || Math.abs(normal[0]) > UPRIGHT ? 'floor' : 'wall and top';
};

const UPRIGHT = 1 - 1e-9;
const NEAR = 1e-6;

/** A name for each face that notches give the pan, in the order given. */
export const notchPartNames = (design: Design, faces: readonly Panel[]): readonly string[] => {
  const words = faces.map((f) => `${design.pan.notches[f.index]?.name ?? 'notch'} ${faceWord(f.normal)}`);
  const seen = new Map<string, number>();
  return words.map((word) => {
    if (words.filter((w) => w === word).length === 1) return word;
    const n = (seen.get(word) ?? 0) + 1;
    seen.set(word, n);
    return `${word} ${n}`;
  });
};

/** Which way a notch's plate looks, in a builder's words; its normal points out of the oil. */
const faceWord = ([x, y, z]: Vec3): string => {
  const [ax, ay, az] = [Math.abs(x), Math.abs(y), Math.abs(z)];
  if (az >= ax && az >= ay) return z < 0 ? 'roof' : 'floor';
  if (ax >= ay) return x > 0 ? 'rear plate' : 'front plate';
  return y > 0 ? 'right plate' : 'left plate';
};

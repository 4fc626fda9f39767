import type { Fold, Part } from '../sheet/index.js';

/** Head of a warning that the design does not pass, for every file of a cut set; null when it does. */
export const notReady = (ids: readonly string[]): string | null =>
  ids.length === 0 ? null : `NOT READY TO CUT: ${ids.join(', ')}`;

/** Degrees to a tenth, mm to a tenth where it matters. */
export const foldWords = (fold: Fold): string =>
  `${fold.name}: ${fold.direction} ${degrees(fold)}, inside R ${trimmed(fold.radius, 2)} mm`;

/** The same without its name, for a short fold. */
export const shortFoldWords = (fold: Fold): string =>
  `${fold.direction} ${degrees(fold)}, R ${trimmed(fold.radius, 2)}`;

const degrees = ({ angle }: Fold): string => `${((angle * 180) / Math.PI).toFixed(1)}°`;

/** What a part is, in two or three lines. */
export const partWords = (part: Part): readonly string[] => [
  `${part.name}: ${part.what}`,
  `${part.quantity} off, ${part.material}, ${trimmed(part.thickness, 2)} mm, flat ${part.flat[0].toFixed(1)} x ${part.flat[1].toFixed(1)} mm, ${massWords(part.mass)} each`,
  part.folds.length > 0 ? `${FACE[part.drawnFace]} ${TOWARDS[part.drawnFace]}` : FACE[part.drawnFace],
];

const FACE: Readonly<Record<Part['drawnFace'], string>> = {
  'oil side': 'Drawn with the oil side up.',
  outside: 'Drawn with the outside up.',
  either: 'Either face up.',
};

const TOWARDS: Readonly<Record<Part['drawnFace'], string>> = {
  'oil side': '"Up" folds towards the oil.',
  outside: '"Up" folds away from the oil.',
  either: '"Up" folds towards the reader.',
};

/** A number without needless noughts. */
export const trimmed = (value: number, decimals: number): string => String(Number(value.toFixed(decimals)));

/** kg, or whole grams below a tenth. */
export const massWords = (mass: number): string =>
  mass < 0.1 ? `${(1000 * mass).toFixed(0)} g` : `${mass.toFixed(2)} kg`;

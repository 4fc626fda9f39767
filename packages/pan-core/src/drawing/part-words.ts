import type { Fold, Part } from '../sheet/index.js';

/** Head of a warning that the design does not pass, for every file of a cut set; null when it does. */
export const notReady = (ids: readonly string[]): string | null =>
  ids.length === 0 ? null : `NOT READY TO CUT: ${ids.join(', ')}`;

/** Degrees to a tenth, mm to a tenth where it matters. */
export const foldWords = (fold: Fold): string =>
  `${fold.name}: ${fold.direction} ${((fold.angle * 180) / Math.PI).toFixed(1)}°, inside R ${trimmed(fold.radius, 2)} mm`;

/** What a part is, in two or three lines. */
export const partWords = (part: Part): readonly string[] => [
  `${part.name}: ${part.what}`,
  `${part.quantity} off, ${part.material}, ${trimmed(part.thickness, 2)} mm, flat ${part.flat[0].toFixed(1)} x ${part.flat[1].toFixed(1)} mm, ${part.mass.toFixed(2)} kg each`,
  FACE[part.drawnFace],
];

const FACE: Readonly<Record<Part['drawnFace'], string>> = {
  'oil side': 'Drawn with the oil side up: "up" folds towards the oil.',
  outside: 'Drawn with the outside up: "up" folds away from the oil.',
  either: 'Either face up.',
};

/** A number without needless noughts. */
export const trimmed = (value: number, decimals: number): string => String(Number(value.toFixed(decimals)));

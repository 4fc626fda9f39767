import type { Curve } from '../geometry/index.js';

/** A drawing read from a file, in its own coordinates: X to the right, Y up the page. */
export interface Drawing {
  /** mm in one unit of the drawing; null when the drawing does not say. */
  readonly unit: number | null;
  readonly curves: readonly DrawnCurve[];
  /** What its reader passed over, each a short clause. */
  readonly passedOver: readonly string[];
  /** Layers of its words, one entry a text; null for one in a block, which lies where the block is placed. */
  readonly words: readonly (string | null)[];
}

/** A curve of a drawing with its layer. */
export interface DrawnCurve {
  readonly curve: Curve;
  readonly layer: string;
}

/** Drawings by the name the design file gives them. */
export type Drawings = Readonly<Record<string, Drawing>>;

/** A drawing that a design file names, and the key that names it. */
export interface NamedDrawing {
  readonly path: readonly string[];
  readonly name: string;
}

const PLACES: readonly (readonly string[])[] = [
  ['engine', 'rail', 'outline'],
  ['engine', 'rail_holes', 'drawing'],
];

const isGroup = (raw: unknown): raw is Record<string, unknown> => typeof raw === 'object' && raw !== null;

/** The drawings a parsed design file names; they are read before the design is. */
export const namedDrawings = (raw: unknown): readonly NamedDrawing[] =>
  PLACES.flatMap((path) => {
    const name = path.reduce<unknown>((at, key) => (isGroup(at) ? at[key] : undefined), raw);
    return typeof name === 'string' ? [{ path, name }] : [];
  });

import type { Path } from '../geometry/index.js';
import type { Vec2 } from '../numeric/index.js';

/** A fold across a flat part; the line is drawn from edge to edge at the middle of the bend zone. */
export interface Fold {
  readonly name: string;
  readonly from: Vec2;
  readonly to: Vec2;
  /** How far the sheet is turned, radians, 0–π. */
  readonly angle: number;
  /** Inside radius of the bend, mm. */
  readonly radius: number;
  /** Seen with the drawn face up: 'up' folds towards the reader. */
  readonly direction: 'up' | 'down';
  /** Flat length of the bend zone (the bend allowance), mm. */
  readonly allowance: number;
}

/** A point or word marked on a flat part. */
export interface Mark {
  readonly path: Path;
  /** Its words; empty for a line that goes with the one before or after it. */
  readonly what: string;
}

/** An edge that is butt-welded to the next piece of the same part, before either is folded. */
export interface PartSeam {
  /** The other piece. */
  readonly other: string;
  /** Which end of this piece it is at, as drawn. */
  readonly end: 'left' | 'right';
  /** mm */
  readonly length: number;
}

/** A round hole of a flat part, in mm. */
export interface RoundHole {
  readonly at: Vec2;
  readonly diameter: number;
  readonly what: string;
  /** Name of the bung that is welded into it, or `the drain`; left out for any other hole. */
  readonly bung?: string;
  /** How far that bung leans from square to the sheet, radians. */
  readonly tilt?: number;
}

/** A flat part as a shop cuts it, in its own plane, mm, the face named by `drawnFace` up. */
export interface Part {
  readonly name: string;
  readonly what: string;
  readonly quantity: number;
  readonly material: string;
  readonly thickness: number;
  readonly drawnFace: 'oil side' | 'outside' | 'either';
  /** Closed, counter-clockwise. */
  readonly outline: Path;
  /** Closed inner cuts that are not round, clockwise. */
  readonly openings: readonly Path[];
  readonly holes: readonly RoundHole[];
  /** Holes that are only marked on the blank, and drilled after welding. */
  readonly pilots?: readonly RoundHole[];
  readonly folds: readonly Fold[];
  readonly marks: readonly Mark[];
  /** Seams across a flat run, where a part is made of pieces. */
  readonly seams?: readonly PartSeam[];
  /** Sentences for the note layer, without the cautions that every part carries. */
  readonly notes: readonly string[];
  /** Length and width of the box around the outline, mm. */
  readonly flat: Vec2;
  /** Net area, mm². */
  readonly area: number;
  /** Outline, openings and holes, mm. */
  readonly cutLength: number;
  readonly mass: number;
}

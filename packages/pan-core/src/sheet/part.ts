import type { Path } from '../geometry/index.js';
import type { Vec2, Vec3 } from '../numeric/index.js';
import type { Facet } from './cutter.js';

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

/** A seam by which a piece is joined again to another piece of the part that it was cut from. */
export interface PartJoin {
  readonly seam: string;
  /** Name of the part that both were cut from. */
  readonly whole: string;
  /** Name of the other piece. */
  readonly other: string;
  /** The edge of this piece as drawn. */
  readonly side: 'left' | 'right' | 'lower' | 'upper';
  readonly length: number;
  /** Opening at the root, mm, half of it taken off each piece. */
  readonly gap: number;
  /** Distance from the left or the lower edge of the part's whole blank, mm. */
  readonly at: number;
  /** Least distance to a bend, hole, corner or mark that lies beside it, mm, and what that is; null where none does. */
  readonly near: { readonly what: string; readonly away: number } | null;
  /** Bends and feet of baffles that it runs across. */
  readonly crosses: readonly string[];
  readonly why: 'sheet' | 'brake' | 'asked';
  /** Places of the seam on the pan's inside, where they are known. */
  readonly places: readonly Vec3[];
  /** The same as stretches from end to end. */
  readonly lines: readonly (readonly Vec3[])[];
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
  /** Sentences for the note layer, without the cautions that every part carries. */
  readonly notes: readonly string[];
  /** Seams by which it is joined to other pieces of one part; left out for a part that is whole. */
  readonly joins?: readonly PartJoin[];
  /** Where its stretches lie on the pan's inside; left out where that is of no use. */
  readonly faces?: readonly Facet[];
  /** Length and width of the box around the outline, mm. */
  readonly flat: Vec2;
  /** Net area, mm². */
  readonly area: number;
  /** Outline, openings and holes, mm. */
  readonly cutLength: number;
  readonly mass: number;
}

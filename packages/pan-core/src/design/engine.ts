import type { Vec2, Vec3 } from '../numeric/index.js';
import type { Box, Rod } from './solid-shape.js';

/** The engine as far as the pan meets it. */
export interface Engine {
  readonly rail: Rail;
  readonly railHoles: readonly RailHole[];
  readonly crankcaseTop: number;
  /** Share 0–1 of the crankcase space above the rail taken up by crank and rods. */
  readonly crankcaseDisplaced: number;
  readonly crank: Crank | null;
  readonly inside: readonly Item[];
  readonly tilt: { readonly noseUp: number; readonly leanLeft: number } | null;
  readonly topAboveRail: number | null;
  readonly pumpInlet: Vec3 | null;
  readonly carries: readonly Item[];
  /** How well crank, holes and what is in and on the engine were measured. */
  readonly plusMinus: number;
  /** How far studs stand down from the rail; 0 for bolts. */
  readonly studs: number;
  /** null when not given. */
  readonly mounts: Mounts | null;
  /** Turns about the crank behind the block; null when not given. */
  readonly flywheel: Round | null;
  /** Round about the crank too, and does not turn. */
  readonly bellHousing: Round | null;
}

/** Middles of the mountings the engine and its gearbox hang from. */
export interface Mounts {
  readonly left: Vec3;
  readonly right: Vec3;
  readonly gearbox: Vec3;
}

/** A round thing about the crank's axis, cut square. */
export interface Round {
  readonly diameter: number;
  readonly rear: number;
  readonly front: number;
}

/** The pan face of the block, at its outer edge, in mm. */
export interface Rail {
  /** The casting's outer edge as a closed polygon seen from above, counter-clockwise, not repeated. */
  readonly outline: readonly Vec2[];
  /** Width of the casting's sealing face; the inside of the rail is the outline less this. */
  readonly land: number;
  /** null: not said, so a mirrored rail cannot be ruled out. */
  readonly seenFrom: 'below' | 'above' | null;
}

/** A bolt hole of the rail: place and thread in mm. */
export interface RailHole {
  readonly at: Vec2;
  /** Thread size, e.g. 8 for M8. */
  readonly thread: number;
}

/** What is known of crank and rods; null is unknown. */
export interface Crank {
  readonly centreAboveRail: number;
  readonly stroke: number;
  /** Largest distance from the crankpin's centre to the outside of the rod's big end. */
  readonly bigEndReach: number;
  /** x of each throw; null when not given. */
  readonly throws: readonly number[] | null;
  /** Width along x swept by one big end. */
  readonly throwWidth: number;
}

/** A named thing in or on the engine. */
export interface Item {
  readonly name: string;
  readonly shape: Box | Rod;
}

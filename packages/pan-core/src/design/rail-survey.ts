import type { Point2 } from './design.js';

/** A distance between two holes beside what the layout makes of it, mm; holes by number, from 1. */
export interface MeasuredDistance {
  readonly holes: readonly [number, number];
  readonly measured: number;
  /** Measured less laid out. */
  readonly residual: number;
  /** Share of a slip in this distance that shows in its own residual, 0 to 1. */
  readonly redundancy: number;
  /** The residual over what it should spread. */
  readonly standardized: number;
}

/** A measured distance that does not agree with the others, in mm. */
export interface SlippedDistance {
  readonly holes: readonly [number, number];
  readonly measured: number;
  /** By how much it was read too long; negative: too short. mm. */
  readonly by: number;
}

/** Holes found from the distances between them. */
export interface DistanceSurvey {
  /** ± of one distance, mm. */
  readonly plusMinus: number;
  /** A standardized residual beyond this is no chance. */
  readonly critical: number;
  readonly distances: readonly MeasuredDistance[];
  /** Distances that do not go with the others, the worst first. */
  readonly slips: readonly SlippedDistance[];
  /** In hole order, with the standard deviation along the direction held worst, mm. */
  readonly holes: readonly { readonly at: Point2; readonly plusMinus: number }[];
  /** Between the two placed holes, by the distances less by their places, mm. */
  readonly placedOff: number;
}

/** Holes known to the nearest centimetre, on the page: enough to choose which distances to measure. */
export interface RoughHoles {
  readonly at: readonly Point2[];
  /** Two holes, from 0, that hold the others in place. */
  readonly placed: readonly [number, number];
  /** Longest distance that can be measured, mm; null when not said. */
  readonly reach: number | null;
}

/** A hole or mark placed from measured distances, in mm. */
export interface SurveyedMark {
  readonly name: string;
  /** Where the drawing has it, on the car. */
  readonly drawn: Point2;
  readonly at: Point2;
  /** Between the two as read, and with the rail turned over, mm. */
  readonly off: number;
  readonly offTurned: number;
}

/** Things known on the engine and on the drawing, which tell a rail from its mirror image. */
export interface MarkSurvey {
  readonly marks: readonly SurveyedMark[];
  readonly says: 'agrees' | 'mirrored' | 'neither' | 'cannot tell';
}

/** What the rail's measurements say of themselves. */
export interface RailSurvey {
  readonly distances: DistanceSurvey | null;
  /** null without rough places. */
  readonly rough: RoughHoles | null;
  readonly marks: MarkSurvey | null;
}

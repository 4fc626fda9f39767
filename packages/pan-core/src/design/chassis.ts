import type { Shape } from './solid-shape.js';

/** What the pan must clear in the car, and how engine and body move. */
export interface Chassis {
  /** null: not said, and it matters as soon as there is an obstacle and a tilt. */
  readonly axes: 'car' | 'pan' | null;
  /** z of the road, negative, in the chassis axes; null when not given. */
  readonly ground: number | null;
  /** How well the road's height was measured; 0 where it is not given. */
  readonly groundPlusMinus: number;
  /** null: how far the car can sink on its springs is not given. */
  readonly suspension: Suspension | null;
  readonly moves: Moves;
  readonly body: { readonly rollPerG: number; readonly divePerG: number };
  readonly obstacles: readonly Obstacle[];
}

/** Where the axles are and how far each end of the car can go down (bump) and up (droop) from where it was measured. */
export interface Suspension {
  readonly frontAxle: number;
  readonly rearAxle: number;
  readonly bumpFront: number;
  readonly bumpRear: number;
  readonly droopFront: number;
  readonly droopRear: number;
}

/** How far the engine moves on its mounts: radians and mm. */
export interface Moves {
  readonly rock: number;
  readonly up: number;
  readonly down: number;
  readonly foreAft: number;
}

/** A thing in the car with its clearance and its plus or minus, in mm. */
export interface Obstacle {
  readonly name: string;
  readonly shape: Shape;
  readonly clear: number;
  readonly plusMinus: number;
}

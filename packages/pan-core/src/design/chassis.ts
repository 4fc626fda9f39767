import type { Shape } from './solid-shape.js';

export interface Chassis {
  /** null: not said, and it matters as soon as there is an obstacle and a tilt. */
  readonly axes: 'car' | 'pan' | null;
  /** z of the road, negative, in the chassis axes; null when not given. */
  readonly ground: number | null;
  readonly moves: Moves;
  readonly body: { readonly rollPerG: number; readonly divePerG: number };
  readonly obstacles: readonly Obstacle[];
}

export interface Moves {
  readonly rock: number;
  readonly up: number;
  readonly down: number;
  readonly foreAft: number;
}

export interface Obstacle {
  readonly name: string;
  readonly shape: Shape;
  readonly clear: number;
  readonly plusMinus: number;
}

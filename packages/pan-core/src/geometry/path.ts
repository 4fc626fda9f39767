import type { Vec2 } from '../numeric/index.js';

/** A straight piece of a plane path. */
export interface Line {
  readonly kind: 'line';
  readonly from: Vec2;
  readonly to: Vec2;
}

/** A circular piece; `sweep` in radians, positive counter-clockwise, never past a full turn. */
export interface Arc {
  readonly kind: 'arc';
  readonly from: Vec2;
  readonly to: Vec2;
  readonly centre: Vec2;
  readonly radius: number;
  readonly sweep: number;
}

export type Segment = Line | Arc;

/** Pieces end to end; closed when the last ends where the first begins. */
export type Path = readonly Segment[];

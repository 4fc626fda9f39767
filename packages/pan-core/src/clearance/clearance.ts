import type { Vec3 } from '../numeric/index.js';

export type ClearanceKind = 'chassis' | 'ground' | 'crank' | 'bolt' | 'carried';

/** How far one thing stands from another, mm; negative when they meet. null: cannot be known from the design. */
export interface Clearance {
  readonly name: string;
  readonly kind: ClearanceKind;
  /** As built, engine at rest. */
  readonly distance: number | null;
  /** Least over the engine's movement, less the measurement's plus-or-minus. */
  readonly worst: number | null;
  /** Least that is wanted. */
  readonly allowed: number;
  /** The two features that are nearest, the pan's or engine's first. */
  readonly between: readonly [string, string];
  /** The same at the worst; often another feature than at rest. */
  readonly worstBetween: readonly [string, string];
  /** Where, in pan axes: on the first of the two, or the deepest point when they meet. */
  readonly at: Vec3 | null;
  readonly because: string;
}

/** A row for what the design does not say. */
export const unknownClearance = (
  name: string,
  kind: ClearanceKind,
  allowed: number,
  between: readonly [string, string],
  because: string,
): Clearance => ({
  name,
  kind,
  distance: null,
  worst: null,
  allowed,
  between,
  worstBetween: between,
  at: null,
  because,
});

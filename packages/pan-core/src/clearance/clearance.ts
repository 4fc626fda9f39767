import type { Vec3 } from '../numeric/index.js';
import { round1 } from './words.js';

/** What kind of pair a clearance is between. */
export type ClearanceKind = 'chassis' | 'ground' | 'crank' | 'bolt' | 'carried' | 'engine';

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
  /** Of the measurement. */
  readonly plusMinus: number;
  /** The two features that are nearest, the pan's or engine's first. */
  readonly between: readonly [string, string];
  /** The same at the worst; often another feature than at rest. */
  readonly worstBetween: readonly [string, string];
  /** Face, edge or corner of an obstacle that is nearest at the worst, by the car's directions; null where not told. */
  readonly worstPart: string | null;
  /** Where, in pan axes: on the pan or engine (of rods, on what they pass), or the deepest point when they meet. */
  readonly at: Vec3 | null;
  /** The same at the worst: the point of the pan or engine, where it is when the engine stands. */
  readonly worstAt: Vec3 | null;
  /** What stands below a bolt in a straight spanner's way. */
  readonly overhead: string | null;
  readonly because: string;
}

type Told = Pick<Clearance, 'name' | 'kind' | 'allowed' | 'between' | 'because'> &
  Partial<Pick<Clearance, 'plusMinus'>>;

/** A row for what the design does not say. */
export const unknownClearance = (told: Told): Clearance => ({
  plusMinus: 0,
  ...told,
  distance: null,
  worst: null,
  worstBetween: told.between,
  worstPart: null,
  at: null,
  worstAt: null,
  overhead: null,
});

/** A row between things that keep their places to each other, so that rest and worst are one. */
export const fixedClearance = (told: Told & { readonly distance: number; readonly at: Vec3 }): Clearance => ({
  plusMinus: 0,
  ...told,
  worst: told.distance - (told.plusMinus ?? 0),
  worstBetween: told.between,
  worstPart: null,
  worstAt: told.at,
  overhead: null,
});

/** A row as it stands when what it rests on was only measured to a plus-or-minus. */
export const lessMeasured = (row: Clearance, plusMinus: number): Clearance =>
  plusMinus === 0
    ? row
    : {
        ...row,
        plusMinus,
        worst: row.worst === null ? null : row.worst - plusMinus,
        because:
          row.worst === null
            ? row.because
            : `${row.because} The worst is ${round1(plusMinus)} mm less, for the measurement.`,
      };

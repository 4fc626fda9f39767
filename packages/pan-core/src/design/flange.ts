import type { Vec2 } from '../numeric/index.js';

/** What seals the flange to the rail: a bead, or a sheet gasket by what it is made of. */
export type GasketKind = 'sealant' | 'soft rubber' | 'hard rubber' | 'rubber on cloth' | 'paper';

/** The plate that bolts to the rail; mm, pan axes. */
export interface Flange {
  readonly thickness: number;
  /** Distance the flange stands beyond the rail's outline; 0 follows it. */
  readonly beyond: number;
  readonly fit: 'fine' | 'medium' | 'coarse';
  readonly gasket: GasketKind;
  /** Milled for the bead; null: a plain face. */
  readonly groove: Groove | null;
  readonly dowels: readonly Dowel[];
  /** Centres of the holes that are drilled once the flange is welded and faced. */
  readonly drillAfterWeld: readonly Vec2[];
  /** Relief between the bolts along the outer edge, down to this land beside the opening; null: none. */
  readonly lighten: { readonly land: number } | null;
  readonly split: FlangeSplit | null;
  readonly endSeals: readonly EndSeal[];
}

/** A milled channel, mm. */
export interface Groove {
  readonly width: number;
  readonly depth: number;
}

/** A dowel that stands in the block's rail. */
export interface Dowel {
  readonly at: Vec2;
  /** Diameter of the dowel. */
  readonly size: number;
  /** A close hole places the flange; an easy one lets a second dowel be off its mark. */
  readonly fit: 'close' | 'easy';
}

/** Where a flange in two pieces is joined: across at an x, or lengthwise at a y. */
export interface FlangeSplit {
  readonly way: 'across' | 'lengthwise';
  readonly at: number;
  readonly joint: 'butt' | 'scarf';
}

/** A round cap or seal housing that hangs below the rail at one end. */
export interface EndSeal {
  readonly end: 'front' | 'rear';
  readonly radius: number;
  readonly centreAboveRail: number;
  /** y of its centre. */
  readonly across: number;
  /** Metal of the end plate below the arc. */
  readonly land: number;
  readonly groove: Groove | null;
}

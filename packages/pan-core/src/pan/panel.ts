import type { Vec3 } from '../numeric/index.js';

/** Who owns a face: a sheet part, the block or a baffle. */
export type Owner = 'belly' | 'side left' | 'side right' | 'wing' | 'notch' | 'flange' | 'block' | 'baffle';

/** A flat piece of sheet seen from the oil: its inside face. Arcs of folds are chords here. */
export interface Panel {
  readonly owner: Owner;
  /** Which wing or notch (position in the design's list); 0 for the rest. */
  readonly index: number;
  readonly plane: number;
  /** Unit normal pointing out of the oil. */
  readonly normal: Vec3;
  /** Closed loops, outer ones counter-clockwise seen from outside the pan, holes clockwise. */
  readonly loops: readonly (readonly Vec3[])[];
  readonly area: number;
}

/** What an outer solid is: the sheet body and its wings, the flange, a bolt with washer, a plug, a weld bead. */
export type OuterRole = 'shell' | 'flange' | 'bolt' | 'plug' | 'bead';

/** A convex solid of metal-and-oil: the pan's outside is the union of these. */
export interface OuterSolid {
  /** In words a builder can find on the pan: "sump floor", "step", "right wing", "flange". */
  readonly name: string;
  readonly role: OuterRole;
  readonly vertices: readonly Vec3[];
  /** Faces as vertex loops, counter-clockwise from outside; `faceNames` names each for the report. */
  readonly faces: readonly (readonly number[])[];
  readonly faceNames: readonly string[];
}

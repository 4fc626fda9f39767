import type { CellFace, ConvexCell } from '../geometry/index.js';
import type { Owner } from './panel.js';

/** What a face belongs to when no opening covers it; `index` is the wing's or notch's place in the design. */
export interface FaceOwner {
  readonly owner: Owner;
  readonly index: number;
}

/** The part of the pan a cell belongs to. */
export type Zone = 'shallow' | 'sump' | 'wing' | 'crankcase';

/** A convex piece of the oil space before it is joined to its neighbours. */
export interface Room extends ConvexCell<FaceOwner> {
  readonly zone: Zone;
}

/** One face of a cell with who owns it. */
export type RoomFace = CellFace<FaceOwner>;

export const owned = (owner: Owner, index = 0): FaceOwner => ({ owner, index });

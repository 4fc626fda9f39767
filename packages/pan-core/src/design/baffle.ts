import type { Vec2 } from '../numeric/index.js';

/** How a baffle is held. */
export type Fixing = 'bolted' | 'welded';

/** A horizontal baffle: a lid over the sump, or a windage tray under the crank. */
export interface Lid {
  readonly kind: 'lid';
  readonly name: string;
  /** Depth of its underside; its thickness lies above. */
  readonly down: number;
  readonly rear: number;
  readonly front: number;
  /** y limits; null reaches the pan's wall, wings included. */
  readonly span: readonly [number, number] | null;
  readonly fixed: Fixing;
  readonly thickness: number;
  readonly holes: readonly Hole[];
  /** Set where it is a windage tray. */
  readonly tray?: true;
  /** Rows of slots that let oil off it. */
  readonly slots?: readonly SlotRow[];
  readonly louvres?: Louvres;
  readonly tabs?: Tabs;
  readonly studs?: Studs;
}

/** An edge of a lid. */
export type LidEdge = 'rear' | 'front' | 'left' | 'right';

/** Slots with round ends in a row beside an edge, evenly from one end of it to the other; mm. */
export interface SlotRow {
  readonly along: LidEdge;
  readonly count: number;
  /** Length along the edge, and width. */
  readonly size: readonly [number, number];
  /** From the edge to the slots' near sides. */
  readonly inset: number;
}

/** Tongues cut on three sides and bent down, long side along the crank, evenly over the whole plate. */
export interface Louvres {
  /** Rows beside each other across the pan, and louvres in each. */
  readonly rows: number;
  readonly count: number;
  /** Length along the crank, and width, of the cut over all. */
  readonly size: readonly [number, number];
  /** How far a tongue is bent down, radians. */
  readonly bend: number;
  /** Side of each louvre at which it is open. */
  readonly opens: 'left' | 'right';
}

/** Folded tabs on the pan's sides that a lid is bolted to. */
export interface Tabs {
  readonly eachSide: number;
  /** Thread of their bolts. */
  readonly size: number;
}

/** Studs of the engine that a tray hangs from. */
export interface Studs {
  readonly size: number;
  readonly at: readonly Vec2[];
}

/** An upright baffle across or along the pan. */
export interface Wall {
  readonly kind: 'wall';
  readonly name: string;
  /** 'across' stands at x = at, its thickness ahead; 'along' stands at y = at, its thickness to the left. */
  readonly run: 'across' | 'along';
  readonly at: number;
  /** y limits (across) or x limits (along); null reaches the pan's wall or, along, the sump's ends. */
  readonly span: readonly [number, number] | null;
  /** Depth of its top edge; null: up to the lid above it, else to the step's depth. */
  readonly topDown: number | null;
  readonly weep: number;
  readonly fixed: Fixing;
  readonly thickness: number;
  readonly doors: readonly Door[];
  readonly holes: readonly Hole[];
}
/** A plate in the oil: lid or wall. */
export type Baffle = Lid | Wall;

/** A flap in a wall that opens one way; sizes in mm. */
export interface Door {
  /** Width by height. */
  readonly size: readonly [number, number];
  /** Centre along the wall: y of an across wall, x of an along wall. */
  readonly at: number;
  /** Height of its lower edge above the floor under its centre. */
  readonly up: number;
  readonly letsOil: 'rearward' | 'forward' | 'left' | 'right';
}

/** A hole or slot in a baffle, in mm. */
export interface Hole {
  /** [x, y] in a lid; [y or x, down] in a wall. */
  readonly at: Vec2;
  /** Round: diameter. Slot: length and width along the plate's two directions. */
  readonly size: number | readonly [number, number];
}

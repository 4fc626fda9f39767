import type { SeamLine } from './seam-line.js';

/** A seam to be welded, with all a welder asks. */
export interface Seam {
  /** Place in the order of welding, from 1: S1, S2 … on drawings. */
  readonly number: number;
  readonly name: string;
  /** The two things joined, in words found on the parts. */
  readonly between: readonly [string, string];
  readonly joint: 'open corner' | 'fillet' | 'tee' | 'butt' | 'ring';
  readonly side: 'outside' | 'inside';
  readonly run: 'continuous' | 'stitch';
  /** mm */
  readonly length: number;
  /** Where it runs; empty for pieces of plates whose place in the pan is not known. */
  readonly lines: readonly SeamLine[];
  readonly prep: SeamPrep;
  /** Leg of a fillet, or depth of a corner's or butt's groove, mm. */
  readonly size: number;
  /** Which step of the order lays it. */
  readonly step: SeamStep;
  /** What is later put over it, or null. */
  readonly closedBy: string | null;
}

/** Root gap of a seam and how its edges are made ready. */
export interface SeamPrep {
  /** Opening at the root, mm. */
  readonly gap: number;
  /** Whether the pattern makes that gap or hands do. */
  readonly fit: string;
  /** Edges, by process. */
  readonly TIG: string;
  readonly MIG: string;
  readonly source: string;
}

/** Steps in the order they are done. */
export type SeamStep = 'plate' | 'pieces' | 'inside' | 'shell' | 'bosses' | 'flange';

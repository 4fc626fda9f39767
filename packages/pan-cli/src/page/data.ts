import type {
  CheckReport,
  Design,
  DipstickReport,
  FitRows,
  Grounds,
  LimitsReport,
  SurgeReport,
  WeldStep,
} from 'pan-core';

/** A solid to draw: points in pan axes, mm, three numbers each, and three point numbers a triangle. */
export interface PageMesh {
  readonly name: string;
  readonly points: readonly number[];
  readonly triangles: readonly number[];
}

/** Something of the chassis that stands still while the engine moves. */
export interface PageObstacle extends PageMesh {
  /** The triangles shown are a part of a measured surface's; distances were taken to all of it. */
  readonly thinned: boolean;
}

/** A fold line of a flat part, y down. */
export interface PageFold {
  readonly name: string;
  readonly from: readonly [number, number];
  readonly to: readonly [number, number];
  readonly angle_deg: number;
  readonly radius_mm: number;
  readonly direction: 'up' | 'down';
}

/** One part laid flat, as it is cut; paths are those of an SVG drawing, y down, mm. */
export interface PagePart {
  readonly name: string;
  readonly what: string;
  readonly quantity: number;
  readonly material: string;
  readonly thickness_mm: number;
  readonly face: 'oil side' | 'outside' | 'either';
  readonly size_mm: readonly [number, number];
  /** Least x and y of the drawing, mm. */
  readonly corner: readonly [number, number];
  readonly mass_kg: number;
  readonly outline: string;
  readonly openings: readonly string[];
  readonly marks: readonly string[];
  readonly folds: readonly PageFold[];
  readonly notes: readonly string[];
}

/** Everything the page is told; the rest it works out itself. Lengths in mm, in pan axes. */
export interface PageData {
  readonly version: string;
  readonly title: string;
  /** As read, without the chassis's obstacles: what the page's own answers start from. */
  readonly design: Design;
  readonly check: CheckReport;
  readonly limits: LimitsReport;
  readonly fit: FitRows;
  /** null where the design has no dipstick or it meets no oil. */
  readonly dipstick: DipstickReport | null;
  /** What numbers of the other reports lean on, by number. */
  readonly rests_on: Readonly<Record<string, Grounds>>;
  readonly surge: SurgeReport | null;
  /** Why there is no surge; empty where there is one. */
  readonly surgeMissing: string;
  readonly pan: readonly PageMesh[];
  readonly obstacles: readonly PageObstacle[];
  readonly parts: readonly PagePart[];
  /** Why there are no parts; empty where there are. */
  readonly partsMissing: string;
  readonly weld: readonly WeldStep[];
  readonly cautions: readonly string[];
}

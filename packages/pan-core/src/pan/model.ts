import type { Design } from '../design/index.js';
import type { PlaneTable } from '../geometry/index.js';
import type { Barrier } from './barrier.js';
import type { Room } from './cell.js';
import type { Mouth } from './mouth.js';
import type { Blocked, Cover, Opening } from './opening.js';
import type { Profile } from './profile.js';

/** A pan as the oil sees it: convex cells joined by openings. */
export interface PanModel {
  readonly design: Design;
  readonly profile: Profile;
  readonly table: PlaneTable;
  readonly cells: readonly Room[];
  /** Geometric volume of each cell, mm³. */
  readonly volumes: readonly number[];
  /** Share of each cell that oil can fill, 0–1. */
  readonly shares: readonly number[];
  readonly openings: readonly Opening[];
  readonly barriers: readonly Barrier[];
  /** Faces of cells with neither cell nor opening beyond: sheet, block or nothing. */
  readonly bare: readonly Cover[];
  /** Baffles as they stand between cells. */
  readonly blocked: readonly Blocked[];
  readonly mouth: Mouth;
  /** x that parts shallow (ahead) from sump (behind). */
  readonly sumpFront: number;
  /** Volumes below the rail with sharp corners and nothing inside, mm³. */
  readonly sharp: { readonly shallow: number; readonly sump: number };
}

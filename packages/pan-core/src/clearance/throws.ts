import { type Design, STAY } from '../design/index.js';
import { freeze, type Vec3 } from '../numeric/index.js';
import type { Plate, Profile } from '../pan/index.js';
import { staySolids } from './stay-solid.js';
import { type Nearest, rodSweeps } from './sweep.js';
import { floorToSweep, wallsToSweep } from './sweep-pan.js';
import { plateToSweep, solidsToSweep } from './sweep-plate.js';
import { tubeToSweep } from './sweep-tube.js';

/** What the rod of one throw comes near; distances in mm, places in pan axes. */
export interface ThrowClearance {
  /** Counted from the rear. */
  readonly number: number;
  readonly x: number;
  readonly near: readonly { readonly to: string; readonly distance: number; readonly at: Vec3 }[];
}

/** Every throw's sweep to floor, side walls, each baffle, the pickup tube and its stay; empty where the throws are not known. */
export const throwClearances = (
  design: Design,
  profile: Profile,
  plates: readonly Plate[],
): readonly ThrowClearance[] => {
  const { crank } = design.engine;
  const sweeps = crank === null ? null : rodSweeps(crank);
  const stay = staySolids(design, profile);
  return freeze(
    (sweeps ?? []).map((sweep, i): ThrowClearance => {
      const tube = tubeToSweep(design.pickup, sweep);
      const found: readonly (readonly [string, Nearest])[] = [
        ['floor', floorToSweep(design, profile, sweep)],
        ['walls', wallsToSweep(design, sweep)],
        ...plates.map((plate) => [plate.baffle.name, plateToSweep(plate, sweep)] as const),
        ...(tube === null ? [] : [['pickup tube', tube] as const]),
        ...(stay.length === 0 ? [] : [[STAY, solidsToSweep(stay, sweep)] as const]),
      ];
      return {
        number: i + 1,
        x: (sweep.x0 + sweep.x1) / 2,
        near: found.map(([to, { distance, at }]) => ({ to, distance, at })),
      };
    }),
  );
};

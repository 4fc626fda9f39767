import { type PanPlace, type Removal, removalOf } from '../clearance/index.js';
import type { Design } from '../design/index.js';
import { freeze } from '../numeric/index.js';
import type { OuterSolid, PanModel, Plate } from '../pan/index.js';

/** A place of the loosened pan from where it was bolted, along the engine. */
export interface RemovalLeg {
  readonly forward_mm: number;
  readonly down_mm: number;
  readonly nose_up_deg: number;
}

/** Getting the pan out with the engine in the car. */
export interface RemovalReport {
  /** How far it comes straight down with the engine where it is, and what stops it; null: it comes all the way. */
  readonly straight_down_mm: number;
  readonly straight_binds: string | null;
  readonly pickup: 'stays' | 'comes along' | null;
  readonly pickup_catches: string | null;
  /** null: no lift looked at frees it. */
  readonly engine_lift_mm: number | null;
  readonly most_lift_mm: number;
  readonly most_lift_binds: string | null;
  readonly legs: readonly RemovalLeg[];
  /** A way without lifting, tilting the pan; null: none found, or none needed. */
  readonly tilted_legs: readonly RemovalLeg[] | null;
  readonly complete: boolean;
  readonly taken: string;
  readonly not_given: readonly string[];
}

const TAKEN =
  'Seen from the side, 2 mm kept round it, every step proved free: bolts out, car on stands, bonnet open, the crank at any turn. A hole in a baffle for the tube is not counted.';

/** null where the chassis's axes are not known. */
export const removalReport = (
  design: Design,
  model: PanModel,
  solids: readonly OuterSolid[],
  plates: readonly Plate[],
  tell: (share: number) => void,
): RemovalReport | null => {
  const found = removalOf(design, model, solids, plates, tell);
  return found === null ? null : reportOf(design, found);
};

const reportOf = ({ engine }: Design, found: Removal): RemovalReport =>
  freeze({
    straight_down_mm: found.straight.down,
    straight_binds: found.straight.binds,
    pickup: found.pickup,
    pickup_catches: found.pickupCatches,
    engine_lift_mm: found.lift,
    most_lift_mm: found.mostLift.by,
    most_lift_binds: found.mostLift.binds,
    legs: found.legs.map(legOf),
    tilted_legs: found.tilted?.map(legOf) ?? null,
    complete: found.complete,
    taken: TAKEN,
    not_given: [
      ...(engine.bellHousing === null ? ['the bell housing (engine.bell_housing)'] : []),
      ...(engine.studs === 0 ? ['studs (engine.studs), so bolts are taken'] : []),
      ...(engine.inside.length === 0 ? ['main caps or pump inside (engine.inside)'] : []),
    ],
  });

const legOf = ({ forward, down, pitch }: PanPlace): RemovalLeg => ({
  forward_mm: forward,
  down_mm: down,
  nose_up_deg: (pitch * 180) / Math.PI,
});

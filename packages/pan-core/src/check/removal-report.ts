import {
  type JackName,
  mountsOf,
  type PanPlace,
  type RaisedWay,
  type Removal,
  removalOf,
} from '../clearance/index.js';
import type { Assumption, Design } from '../design/index.js';
import { freeze } from '../numeric/index.js';
import type { OuterSolid, PanModel, Plate } from '../pan/index.js';

/** A place of the loosened pan from where it was bolted, along the engine. */
export interface RemovalLeg {
  readonly forward_mm: number;
  readonly left_mm: number;
  readonly down_mm: number;
  readonly nose_up_deg: number;
}

/** One way of raising the engine, at the least that was found to free the pan. */
export interface RaiseReport {
  readonly jack: JackName;
  /** At the mounting the jack raises; null: none frees it up to the most. */
  readonly raised_mm: number | null;
  /** How far the engine is turned then, without sign. */
  readonly turned_deg: number | null;
  readonly most_mm: number;
  readonly most_binds: string | null;
  readonly legs: readonly RemovalLeg[];
}

/** Getting the pan out with the engine in the car. */
export interface RemovalReport {
  /** How far it comes straight down with the engine where it is, and what stops it; null: it comes all the way. */
  readonly straight_down_mm: number;
  readonly straight_binds: string | null;
  readonly pickup: 'stays' | 'comes along' | null;
  readonly pickup_catches: string | null;
  /** The engine lifted level; 0: it stays where it is; null: no lift looked at frees it. */
  readonly engine_lift_mm: number | null;
  /** The way with the engine where it is, or else with the least raise. */
  readonly legs: readonly RemovalLeg[];
  /** The pan has to go sideways on a way with the engine where it is. */
  readonly sideways: boolean;
  /** A way with the engine where it is, tilting the pan; null: none found, or none needed. */
  readonly tilted_legs: readonly RemovalLeg[] | null;
  /** Ways of raising the engine, the least first; empty where it may stay. */
  readonly raises: readonly RaiseReport[];
  readonly complete: boolean;
  readonly taken: string;
  readonly not_given: readonly string[];
}

const RAISED = ' Hoses, wiring and exhaust come along with a raised engine only so far.';
const TAKEN =
  'Down, fore and aft, then sideways or tilted; 2 mm kept round it, every step proved free: bolts out, car on stands, bonnet open, the crank at any turn. A hole in a baffle for the tube is not counted.';

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

const reportOf = (design: Design, found: Removal): RemovalReport => {
  const { engine } = design;
  const { still, raises } = found;
  const level = raises.find(({ jack }) => jack === 'lifted level');
  const unmoved = still !== null && still.freedom !== 'pitched';
  return freeze({
    straight_down_mm: found.straight.down,
    straight_binds: found.straight.binds,
    pickup: found.pickup,
    pickup_catches: found.pickupCatches,
    engine_lift_mm: unmoved ? 0 : (level?.raised ?? null),
    legs: (unmoved ? still.legs : (raises[0]?.legs ?? [])).map(legOf),
    sideways: still?.freedom === 'sideways',
    tilted_legs: still?.freedom === 'pitched' ? still.legs.map(legOf) : null,
    raises: raises.map(raiseOf),
    complete: found.complete,
    taken: raises.some(({ raised }) => raised !== null) ? TAKEN + RAISED : TAKEN,
    not_given: [
      ...(engine.bellHousing === null ? ['the bell housing (engine.bell_housing)'] : []),
      ...(engine.studs === 0 ? ['studs (engine.studs), so bolts are taken'] : []),
      ...(engine.inside.length === 0 ? ['main caps or pump inside (engine.inside)'] : []),
    ],
  });
};

/** Only the ways of raising the engine rest on where it is mounted. */
export const mountsAssumed = (design: Design, { raises }: RemovalReport): readonly Assumption[] => {
  const { mounts, given } = mountsOf(design);
  if (given || raises.length === 0) return [];
  const places = Object.entries(mounts).map(
    ([name, at]) => `${name} [${at.map((v: number) => v.toFixed(0)).join(', ')}] mm`,
  );
  const why =
    'common places: beside the middle of the block at the crank’s height, the gearbox’s behind it; only for raising the engine';
  return [{ path: ['engine', 'mounts'], value: places.join(', '), why }];
};

const raiseOf = ({ jack, raised, turned, most, legs }: RaisedWay): RaiseReport => ({
  jack,
  raised_mm: raised,
  turned_deg: turned === null ? null : degrees(turned),
  most_mm: most.by,
  most_binds: most.binds,
  legs: legs.map(legOf),
});

const legOf = ({ forward, left, down, pitch }: PanPlace): RemovalLeg => ({
  forward_mm: forward,
  left_mm: left,
  down_mm: down,
  nose_up_deg: degrees(pitch),
});

const degrees = (radians: number): number => (radians * 180) / Math.PI;

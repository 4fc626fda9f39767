import type { Assumption, Design, Manoeuvre } from '../design/index.js';
import {
  inventoryOf,
  leastHeldUp,
  type OilSystem,
  oilIn,
  restAnswer,
  shallowFall,
  trappedAir,
  undrained,
} from '../oil/index.js';
import type { Zone } from '../pan/index.js';
import type { Check } from './report.js';
import { judge, limitFor, type Rule } from './row.js';
import { sweepOverOil } from './sweep.js';

/** Largest hollow, air pocket and rest after draining that go without a word, L (common practice, no source). */
const HOLLOW = 0.2;
const POCKET = 0.05;
const LEFT = 0.3;
/** Least fall of the shallow's floor to the sump, deg (common practice, no source). */
const FALL = 1;

/** Running level under the rods, stopped level under the rail, hollows and trapped air. */
export const oilChecks = (design: Design, system: OilSystem): readonly Check[] => {
  const { stoppedInPan } = inventoryOf(design.oil);
  const { runningInPan } = inventoryOf({ ...design.oil, heldUp: leastHeldUp(design.oil) });
  const rest = restAnswer(system, stoppedInPan);
  const mouth = rest.pools.find((p) => p.hasPickup);
  const air = trappedAir(system);
  const hollow = rest.rest.neverReturns / 1e6;
  const at = air.at;
  return [
    judge({
      id: 'running_level',
      group: 'oil',
      title: 'running oil under the rods',
      unit: 'mm',
      value: sweepOverOil(system, runningInPan),
      limit: limitFor(design.limits, ['running_level'], 25),
      wants: 'at least',
      miss: 'fail',
      because: 'From the rods’ sweep down to the oil at rest, running quantity, installed tilt.',
      fix: 'Less oil, or a deeper or wider sump: rods that touch oil froth it and pull it up.',
    }),
    judge({
      id: 'stopped_level',
      group: 'oil',
      title: 'stopped oil under the rail',
      unit: 'mm',
      value: mouth?.surface ?? null,
      limit: limitFor(design.limits, ['stopped_level'], 0),
      wants: 'at least',
      miss: 'warn',
      because: 'Oil above the rail stands against the gasket and the rear seal.',
      fix: 'Less oil, or a larger sump.',
    }),
    judge({
      id: 'never_returns',
      group: 'oil',
      title: 'oil that never runs back',
      unit: 'L',
      value: hollow,
      limit: limitFor(design.limits, ['never_returns'], HOLLOW),
      wants: 'at most',
      miss: 'warn',
      because: `Hollows that do not drain to the mouth in the installed tilt; ${(hollowsIn(system, rest.rest.hollows, 'shallow') / 1e6).toFixed(2)} L of it in the shallow.`,
      fix: 'Give the shallow’s floor more fall to the sump, or the baffle a weep or a hole.',
    }),
    judge({
      id: 'trapped_air',
      group: 'oil',
      title: 'air trapped below the rail',
      unit: 'L',
      value: air.volume / 1e6,
      limit: limitFor(design.limits, ['trapped_air'], POCKET),
      wants: 'at most',
      miss: 'warn',
      because:
        at === null
          ? 'Every space vents to the crankcase.'
          : `The largest pocket’s highest point is at x ${at[0].toFixed(0)}, y ${at[1].toFixed(0)}, z ${at[2].toFixed(0)} mm.`,
      fix:
        at === null
          ? ''
          : `A vent hole of 6 mm near x ${at[0].toFixed(0)}, y ${at[1].toFixed(0)} lets it out; the fill is wrong by as much until then.`,
    }),
    ...drainChecks(design, system),
  ];
};

/** Oil that stays in the hollows of one part of the pan, mm³. */
export const hollowsIn = ({ model }: OilSystem, hollows: Float64Array, zone: Zone): number =>
  hollows.reduce((sum, held, c) => (model.cells[c]?.zone === zone ? sum + held : sum), 0);

const drainChecks = (design: Design, system: OilSystem): readonly Check[] => {
  const [left, fall] = [undrained(system), shallowFall(system)];
  const rules: Rule[] = [];
  if (left !== null) {
    rules.push({
      id: 'undrained',
      group: 'oil',
      title: 'oil left when drained',
      unit: 'L',
      value: left / 1e6,
      limit: limitFor(design.limits, ['undrained'], LEFT),
      wants: 'at most',
      miss: 'warn',
      because: 'Under the plug hole’s lowest edge and behind lips; plug out, installed tilt, level ground.',
      fix: 'Put the plug where the floor is lowest in the car, and weeps or holes through what stands in the way.',
    });
  }
  if (fall !== null) {
    rules.push({
      id: 'shallow_fall',
      group: 'oil',
      title: 'fall of the shallow to the sump',
      unit: 'deg',
      value: (fall * 180) / Math.PI,
      limit: limitFor(design.limits, ['shallow_fall'], FALL),
      wants: 'at least',
      miss: 'warn',
      because:
        'The flattest piece of the shallow’s floor, installed tilt; flatter, oil off the crank is slow to come back.',
      fix: 'Slope the shallow’s floor more towards the sump.',
    });
  }
  return rules.map(judge);
};

/**
 * Fills at which a manoeuvre is looked at: what runs at its engine speed, and half a litre either way when held-up
 * oil is a guess.
 */
export const runningFills = (
  design: Design,
  assumed: readonly Assumption[],
  manoeuvre: Manoeuvre,
): readonly number[] => {
  const { runningInPan } = inventoryOf(oilIn(design.oil, manoeuvre));
  const guessed = assumed.some((a) => a.path.join('.') === 'oil.held_up');
  return guessed ? [runningInPan, Math.max(0, runningInPan - 0.5e6), runningInPan + 0.5e6] : [runningInPan];
};

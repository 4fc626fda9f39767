import { type Bung, type Design, slug } from '../design/index.js';
import { dot3, subtract3, unit3, type Vec3 } from '../numeric/index.js';
import { depthUnderOil, inventoryOf, leastHeldUp, type OilSystem, restAnswer } from '../oil/index.js';
import type { Check } from './report.js';
import { judge, limitFor } from './row.js';

/** What each kind of bung asks of the oil at rest. */
interface Asks {
  readonly oil: 'running' | 'stopped';
  readonly wants: 'over' | 'under';
  readonly miss: 'fail' | 'warn';
  /** mm between the oil and its lowest edge where it must be clear, its axis where it must be under. */
  readonly room: number;
  readonly why: string;
  readonly fix: string;
}

/** Common practice, no source. */
const ASKS: Readonly<Record<Bung['purpose'], Asks | null>> = {
  return: {
    oil: 'running',
    wants: 'over',
    miss: 'fail',
    room: 0,
    why: 'a return that ends under oil backs up, and what it drains smokes and leaks',
    fix: 'Move it up: oil falls into the pan only through air.',
  },
  breather: {
    oil: 'running',
    wants: 'over',
    miss: 'fail',
    room: 0,
    why: 'a breather under oil blows it out',
    fix: 'Move it up, above the oil.',
  },
  temperature: {
    oil: 'running',
    wants: 'under',
    miss: 'warn',
    room: 10,
    why: 'a sender in air tells the air’s temperature',
    fix: 'Move it down, best near the pickup.',
  },
  level: {
    oil: 'stopped',
    wants: 'under',
    miss: 'warn',
    room: 0,
    why: 'a level sender over the oil says empty of a full engine',
    fix: 'Move it down to the level at which it should warn.',
  },
  magnet: {
    oil: 'running',
    wants: 'under',
    miss: 'warn',
    room: 0,
    why: 'a magnet over the oil catches nothing',
    fix: 'Move it down, to where the oil goes on its way to the pickup.',
  },
  other: null,
};

/** How far the lowest edge of a bung's hole hangs below its axis, mm: none where it looks straight up or down. */
const dropOf = ({ at, toward, diameter }: Bung, up: Vec3): number => {
  const along = dot3(unit3(subtract3(toward, at)), up);
  return (diameter / 2) * Math.sqrt(Math.max(0, 1 - along * along));
};

/** Every bung against the oil that stands in the pan on level ground, by what it is for. */
export const bungLevelChecks = (design: Design, system: OilSystem): readonly Check[] => {
  if (design.bungs.length === 0) return [];
  const levels = {
    stopped: restAnswer(system, inventoryOf(design.oil).stoppedInPan),
    running: restAnswer(system, inventoryOf({ ...design.oil, heldUp: leastHeldUp(design.oil) }).runningInPan),
  };
  return design.bungs.flatMap((bung): readonly Check[] => {
    const asks = ASKS[bung.purpose];
    if (asks === null) return [];
    const { up } = levels[asks.oil];
    const depth = depthUnderOil(system.model, levels[asks.oil], bung.at);
    if (depth === null && asks.wants === 'over') return [];
    const id = `bung_level_${slug(bung.name)}`;
    // With no oil below it a sender is as far from it as from the pan's foot; its distance is not known.
    const value = depth === null ? null : asks.wants === 'over' ? -depth - dropOf(bung, up) : depth;
    return [
      judge({
        id,
        group: 'oil',
        title: `${bung.name} ${asks.wants} the oil`,
        unit: 'mm',
        value,
        limit: limitFor(design.limits, [id], asks.room),
        wants: 'at least',
        miss: asks.miss,
        because: `${asks.wants === 'over' ? 'Its lowest edge' : 'Its axis'} against ${asks.oil} oil at rest, installed tilt: ${asks.why}.`,
        fix: asks.fix,
      }),
    ];
  });
};

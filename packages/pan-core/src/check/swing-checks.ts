import { type Design, type Load, type Manoeuvre, slug } from '../design/index.js';
import {
  type OilSystem,
  rampAnswer,
  restAnswer,
  SLOSH_DAMPING,
  sloshOf,
  stepOvershoot,
} from '../oil/index.js';
import { describeLoad } from './mouth-case.js';
import type { Check } from './report.js';
import { judge, limitFor } from './row.js';

/**
 * The extra margin of each manoeuvre against a load that comes on all at once: the mouth where the surface has swung
 * past its standing slope by the first mode's overshoot, lips and gaps only.
 */
export const swingChecks = (
  design: Design,
  system: OilSystem,
  fillsOf: (manoeuvre: Manoeuvre) => readonly number[],
): readonly Check[] =>
  design.manoeuvres
    .filter(({ forward, left }) => forward !== 0 || left !== 0)
    .map((manoeuvre) => swingCheck(design, system, manoeuvre, Math.min(...fillsOf(manoeuvre))));

const swingCheck = (design: Design, system: OilSystem, manoeuvre: Manoeuvre, volume: number): Check => {
  const over = stepOvershoot(SLOSH_DAMPING);
  const load: Load = { ...manoeuvre, forward: over * manoeuvre.forward, left: over * manoeuvre.left };
  const { pickup } = rampAnswer(system, volume, load, 'held', manoeuvre.via);
  const id = `swing_${slug(manoeuvre.name)}`;
  return judge({
    id,
    group: 'mouth',
    title: `${manoeuvre.name}, all at once`,
    unit: 'mm',
    value: pickup.submergence,
    limit: limitFor(design.limits, [id, 'swing'], 0),
    wants: 'at least',
    miss: 'warn',
    because: `${describeLoad(manoeuvre)} that comes on at once swings the oil ${over.toFixed(2)} times as far, as if it were ${describeLoad(load)}${periodWords(system, volume, manoeuvre)}; first wave only.`,
    fix: 'It lasts half such a swing: see pan surge for how long it is bared. A wall across the oil’s way shortens it.',
  });
};

/** How long one swing of the mouth's pool takes, the longer of the directions the load has. */
const periodWords = (system: OilSystem, volume: number, { forward, left }: Manoeuvre): string => {
  const pool = sloshOf(system, restAnswer(system, volume)).find(({ hasPickup }) => hasPickup);
  const periods = [forward === 0 ? null : pool?.fore, left === 0 ? null : pool?.side].filter(
    (t) => t != null,
  );
  return periods.length === 0 ? '' : `, one swing in ${Math.max(...periods).toFixed(1)} s`;
};

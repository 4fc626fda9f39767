import { type Design, slug } from '../design/index.js';
import { type OilAnswer, type OilSystem, oilIn } from '../oil/index.js';
import { lidThatHolds, moreOil } from './advice.js';
import { describeLoad, type MouthCase, worseWay, worstCase } from './mouth-case.js';
import type { Check } from './report.js';
import { judge, limitFor } from './row.js';

/**
 * Covered or not in each manoeuvre, held and settled, and how long the pool lasts.
 *
 * @param cases each manoeuvre at every running fill, the likeliest first
 */
export const mouthChecks = (
  design: Design,
  system: OilSystem,
  cases: readonly (readonly MouthCase[])[],
  how: MouthAsk = { advise: true },
): readonly Check[] => cases.flatMap((one) => manoeuvreChecks(design, system, one, how));

/** Advice costs more than the answer, so whoever only wants the answer goes without. */
export interface MouthAsk {
  readonly advise: boolean;
}

const manoeuvreChecks = (
  design: Design,
  system: OilSystem,
  cases: readonly MouthCase[],
  { advise }: MouthAsk,
): readonly Check[] => {
  const found = worstCase(cases);
  const { manoeuvre } = found;
  const name = slug(manoeuvre.name);
  const advice =
    found.worst > 0 || !advise ? '' : cure(design, system, found, cases[0]?.volume ?? found.volume);
  const covered = (gating: 'held' | 'settled', answer: OilAnswer): Check =>
    judge({
      id: `mouth_${gating}_${name}`,
      group: 'mouth',
      title: `${manoeuvre.name}, ${gating}`,
      unit: 'mm',
      value: answer.pickup.submergence,
      limit: limitFor(design.limits, [`mouth_${gating}_${name}`, `mouth_${gating}`, 'mouth'], 0),
      wants: 'at least',
      miss: 'fail',
      because: because(found, answer),
      fix: advice,
    });
  const { pump } = oilIn(design.oil, manoeuvre);
  return [
    covered('held', found.held),
    covered('settled', found.settled),
    judge({
      id: `draw_${name}`,
      group: 'mouth',
      title: `${manoeuvre.name}, pool lasts`,
      unit: 's',
      value: pump === null ? null : found.settled.pickup.spare / pump,
      limit: limitFor(design.limits, [`draw_${name}`, 'draw'], manoeuvre.seconds),
      wants: 'at least',
      miss: 'warn',
      because: 'Oil above baring ÷ pump flow, with no return reaching the mouth.',
      fix: 'What runs back in the meantime is not counted here; more oil at the mouth lasts longer.',
    }),
  ];
};

const because = (found: MouthCase, answer: OilAnswer): string => {
  const { pickup, lip } = answer;
  const litres = (found.volume / 1e6).toFixed(1);
  const load = describeLoad(found.manoeuvre);
  const edge = lip === null ? '' : lip.below < 0.5 ? `; full to ${lip.name}` : '';
  return pickup.covered
    ? `${load} at ${litres} L in the pan${edge}.`
    : `${load} bares the mouth at ${litres} L in the pan${edge}.`;
};

const cure = (design: Design, system: OilSystem, found: MouthCase, running: number): string => {
  const worse = worseWay(found);
  const extra = moreOil(system, found.manoeuvre, running, worse);
  const lid = lidThatHolds(design, found.manoeuvre, found.volume, worse);
  const ways = [
    ...(extra === null ? [] : [`${(extra / 1e6).toFixed(1)} L more`]),
    ...(lid === null ? [] : [`${lid.words} (${lasts(lid.found, oilIn(design.oil, found.manoeuvre).pump)})`]),
  ];
  if (ways.length > 0) return `${ways.join(', or ')} holds it.`;
  return 'Neither more oil under the rods nor a longer lid holds it: a deeper sump, a wing, or the mouth moved towards where the oil goes.';
};

const lasts = (found: MouthCase, pump: number | null): string => {
  return pump === null
    ? 'pump flow not known'
    : `lasts ${(found.settled.pickup.spare / pump).toFixed(1)} s with no return`;
};

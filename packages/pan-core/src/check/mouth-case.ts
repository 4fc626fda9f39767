import type { Manoeuvre } from '../design/index.js';
import { type OilAnswer, type OilSystem, rampAnswer } from '../oil/index.js';

/** One manoeuvre answered both ways, at the fill that is worse for it. */
export interface MouthCase {
  readonly manoeuvre: Manoeuvre;
  /** Oil in the pan, mm³. */
  readonly volume: number;
  readonly held: OilAnswer;
  readonly settled: OilAnswer;
  /** The lesser submergence of the two, mm. */
  readonly worst: number;
}

/** A manoeuvre at each of the given fills. */
export const mouthCases = (
  system: OilSystem,
  manoeuvre: Manoeuvre,
  volumes: readonly number[],
): readonly MouthCase[] =>
  volumes.map((volume) => {
    const held = rampAnswer(system, volume, manoeuvre, 'held', manoeuvre.via);
    const settled = rampAnswer(system, volume, manoeuvre, 'settled', manoeuvre.via);
    return caseOf(manoeuvre, volume, held, settled);
  });

const caseOf = (manoeuvre: Manoeuvre, volume: number, held: OilAnswer, settled: OilAnswer): MouthCase => ({
  manoeuvre,
  volume,
  held,
  settled,
  worst: Math.min(held.pickup.submergence, settled.pickup.submergence),
});

/** The worst of a manoeuvre's fills, by submergence. */
export const worstCase = (cases: readonly MouthCase[]): MouthCase =>
  cases.reduce((a, b) => (b.worst < a.worst ? b : a));

/** The worst of the given fills, by submergence. */
export const mouthCase = (system: OilSystem, manoeuvre: Manoeuvre, volumes: readonly number[]): MouthCase =>
  worstCase(mouthCases(system, manoeuvre, volumes));

/**
 * The manoeuvre where the mouth stays covered both ways, else null; the second way is not asked when the first bares it.
 *
 * @param first the way that is likelier to bare it, which only saves work
 */
export const coveredCase = (
  system: OilSystem,
  manoeuvre: Manoeuvre,
  volume: number,
  first: 'held' | 'settled' = 'held',
): MouthCase | null => {
  const after = (gating: 'held' | 'settled'): OilAnswer =>
    rampAnswer(system, volume, manoeuvre, gating, manoeuvre.via);
  const one = after(first);
  if (!one.pickup.covered) return null;
  const other = after(first === 'held' ? 'settled' : 'held');
  if (!other.pickup.covered) return null;
  const [held, settled] = first === 'held' ? [one, other] : [other, one];
  return caseOf(manoeuvre, volume, held, settled);
};

/** The way in which the mouth is worse off. */
export const worseWay = ({ held, settled }: MouthCase): 'held' | 'settled' =>
  settled.pickup.submergence < held.pickup.submergence ? 'settled' : 'held';

/** "braking 0.7 g with right turn 0.8 g" */
export const describeLoad = ({ forward, left }: Pick<Manoeuvre, 'forward' | 'left'>): string => {
  const g = (v: number): string => `${Math.abs(v).toFixed(2).replace(/0$/, '')} g`;
  const parts = [
    ...(forward < 0 ? [`braking ${g(forward)}`] : forward > 0 ? [`accelerating ${g(forward)}`] : []),
    ...(left > 0 ? [`left turn ${g(left)}`] : left < 0 ? [`right turn ${g(left)}`] : []),
  ];
  return parts.length > 0 ? parts.join(' with ') : 'standing';
};

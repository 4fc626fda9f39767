import type { Manoeuvre } from '../design/index.js';
import { freeze } from '../numeric/index.js';
import { type OilAnswer, type OilSystem, rampAnswer, restAnswer } from './answer.js';
import { bindingWords } from './limit.js';
import type { Lip } from './lip.js';

/** The least oil that carries a manoeuvre. */
export interface LeastFill {
  readonly manoeuvre: string;
  /** Oil in the pan, mm³, from which on every fill tried up to the rail covers the mouth; null when none does. */
  readonly volume: number | null;
  /** The state that bares first a little under it. */
  readonly state: 'rest' | 'held' | 'settled' | null;
  /** What fails to hold the oil a little under it, in words. */
  readonly binding: string;
  readonly lip: Lip | null;
  /** Among the fills tried, more oil never bared what less oil covered. */
  readonly monotone: boolean;
}

/** Step between the fills tried, and how closely the least is then found, mm³. */
const STEP = 0.5e6;
const CLOSE = 0.01e6;

/** Oil the pan takes below the rail, mm³. */
export const volumeToRail = ({ model, body }: OilSystem): number =>
  model.cells.reduce(
    (sum, cell, c) => (cell.zone === 'crankcase' ? sum : sum + (body.capacity[c] as number)),
    0,
  );

/**
 * The least oil in the pan that keeps the mouth covered at rest, held and settled in a manoeuvre. That more oil
 * never bares what less oil covered is tested on random pans and not proven, so fills are tried from the rail
 * down in half litres, and the least is sought only below the lowest unbroken run.
 */
export const leastFill = (system: OilSystem, manoeuvre: Manoeuvre): LeastFill => {
  const top = volumeToRail(system);
  const count = Math.max(1, Math.ceil(top / STEP));
  const fills = Array.from({ length: count + 1 }, (_, i) => (top * i) / count);
  const failures = fills.map((volume) => failureAt(system, manoeuvre, volume));
  const lastBared = failures.findLastIndex((failure) => failure !== null);
  const monotone = failures.slice(0, Math.max(0, lastBared)).every((failure) => failure !== null);
  const base = { manoeuvre: manoeuvre.name, monotone };
  const highest = failures[lastBared];
  if (highest === undefined || highest === null) {
    return freeze({ ...base, volume: 0, state: null, binding: 'covered with any oil', lip: null });
  }
  if (lastBared === count) return freeze({ ...base, volume: null, ...told(highest) });
  let [no, yes, failure] = [fills[lastBared] as number, fills[lastBared + 1] as number, highest];
  while (yes - no > CLOSE) {
    const middle = (no + yes) / 2;
    const found = failureAt(system, manoeuvre, middle);
    if (found === null) yes = middle;
    else [no, failure] = [middle, found];
  }
  return freeze({ ...base, volume: yes, ...told(failure) });
};

interface Failure {
  readonly state: 'rest' | 'held' | 'settled';
  readonly answer: OilAnswer;
}

const told = ({ state, answer }: Failure): Pick<LeastFill, 'state' | 'binding' | 'lip'> => ({
  state,
  binding: state === 'rest' ? 'bared at rest: too little oil' : bindingWords(answer.lip),
  lip: answer.lip,
});

/** The first state that bares the mouth with so much oil, or null when none does. */
const failureAt = (system: OilSystem, manoeuvre: Manoeuvre, volume: number): Failure | null => {
  const rest = restAnswer(system, volume, manoeuvre.grade);
  if (!rest.pickup.covered) return { state: 'rest', answer: rest };
  for (const state of ['held', 'settled'] as const) {
    const answer = rampAnswer(system, volume, manoeuvre, state, manoeuvre.via);
    if (!answer.pickup.covered) return { state, answer };
  }
  return null;
};

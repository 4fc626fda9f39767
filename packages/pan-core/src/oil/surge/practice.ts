import type { Assumption } from '../../design/index.js';
import table from './surge-practice.json' with { type: 'json' };

export type PracticeName = keyof typeof table;

/** A value taken where nobody said otherwise. */
export const practice = (name: PracticeName): number => table[name].value;

const KEYS: Readonly<Record<PracticeName, string>> = {
  damping: 'slosh damping',
  orifice: 'discharge coefficient',
  roundLaminar: 'discharge in slow oil, round',
  slitLaminar: 'discharge in slow oil, slit',
  doorLeak: 'door leak',
  doorHead: 'head that opens a door',
  doorSeconds: 'door response',
  rampSeconds: 'time a load takes to come on',
  afterSeconds: 'run after the load',
  celsius: 'oil temperature',
  returnSeconds: 'time oil spends in the engine',
};

/** The same as a line of the list of what was assumed. */
export const practiceNote = (name: PracticeName): Assumption => {
  const { value, unit, why } = table[name];
  return { path: [KEYS[name]], value: unit === '1' ? `${value}` : `${value} ${unit}`, why };
};

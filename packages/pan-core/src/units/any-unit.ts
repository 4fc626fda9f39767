import type { Unit } from './unit.js';

/**
 * Looks up unit names that the common table lacks (yd, cuft, arcmin, hour …) in mathjs, which is loaded
 * only here because it costs more start-up time than everything else together. Names it does not know,
 * or that measure something else, are left out of the answer.
 */
export const loadUnits = async (names: readonly string[]): Promise<readonly Unit[]> => {
  const { lookUpUnit } = await import('./mathjs-unit.js');
  return Object.freeze(names.flatMap((name) => lookUpUnit(name)));
};

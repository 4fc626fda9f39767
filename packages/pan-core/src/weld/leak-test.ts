import { power } from '../numeric/index.js';
/** Pa in one pound per square inch (exact to its digits by definition of pound and inch). */
export const PSI = 6894.757293168;
/** Standard air pressure, Pa. */
export const AIR = 101_325;

/** Common practice 2–3 psi, never past 5; no standard sets one for an engine's pan. */
export const TEST_PSI = Object.freeze({ low: 2, high: 3, never: 5 });

/**
 * Energy that air under pressure would set free, J: 2.5·P_t·V·[1 − (P_a/P_t)^0.286], pressures absolute.
 * ASME PCC-2, stored energy of a pneumatic test; for air and nitrogen (k = 1.4).
 *
 * @param gauge Pa above the air outside
 * @param volume mm³
 */
export const storedEnergy = (gauge: number, volume: number): number => {
  const test = AIR + gauge;
  return 2.5 * test * volume * 1e-9 * (1 - power(AIR / test, 0.286));
};

/** Force on a plate, N. @param gauge Pa @param area mm² */
export const pressureForce = (gauge: number, area: number): number => gauge * area * 1e-6;

import { power } from './power.js';

const SAFETY = 0.9;
const LEAST = 0.2;
const MOST = 5;
/** Exponents of a proportional-integral controller for a fifth-order step. */
const NOW = 0.7 / 5;
const BEFORE = 0.4 / 5;

/**
 * Factor for the next step's length from this step's error and the last accepted one's, both in units of the
 * tolerance. Gustafsson's proportional-integral control, as in Hairer and Wanner: Solving Ordinary Differential
 * Equations II, 2nd ed., IV.2 (from memory). A step with an error above 1 is to be tried again.
 */
export const stepFactor = (error: number, lastError: number): number => {
  if (!(error > 0)) return Number.isNaN(error) ? LEAST : MOST;
  if (error > 1) return Math.max(LEAST, SAFETY * power(error, -1 / 5));
  return Math.min(
    MOST,
    Math.max(LEAST, SAFETY * power(error, -NOW) * power(Math.max(lastError, 1e-4), BEFORE)),
  );
};

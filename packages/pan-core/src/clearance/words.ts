import type { Approach } from './obstacle-form.js';

export const round1 = (mm: number): string => mm.toFixed(1);

/** A signed distance in words: how far apart, or how far one reaches into the other. */
export const gapWords = (mm: number): string =>
  mm < 0 ? `${round1(-mm)} mm into each other` : `${round1(mm)} mm apart`;

/** The same for something that goes by. */
export const passWords = (what: string, mm: number): string =>
  mm < 0 ? `meets the ${what}, ${round1(-mm)} mm deep` : `passes the ${what} by ${round1(mm)} mm`;

/** What follows the distance at rest where the engine’s movement cannot be followed. */
export const restWords = '; the engine rocks and the crank’s height (engine.crank) is not given';

/** What the engine’s movement and the measurement do to a distance; empty where they do nothing. */
export const worstWords = (worst: Approach, nominal: Approach, plusMinus: number): string => {
  const least = Math.min(worst.distance, nominal.distance);
  const moved =
    least < nominal.distance - 0.05
      ? `, ${gapWords(least)} as the engine moves${worst.feature === nominal.feature ? '' : `, there at the ${worst.feature}`}`
      : '';
  return moved + (plusMinus > 0 ? `, less ${round1(plusMinus)} mm for the measurement` : '');
};

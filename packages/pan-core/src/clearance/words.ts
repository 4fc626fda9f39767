import type { Moves } from '../design/index.js';
import type { Approach } from './chassis.js';

export const round1 = (mm: number): string => mm.toFixed(1);

/** A signed distance in words: how far apart, or how far one reaches into the other. */
export const gapWords = (mm: number): string =>
  mm < 0 ? `${round1(-mm)} mm into each other` : `${round1(mm)} mm apart`;

/** The same for something that goes by. */
export const passWords = (what: string, mm: number): string =>
  mm < 0 ? `meets the ${what}, ${round1(-mm)} mm deep` : `passes the ${what} by ${round1(mm)} mm`;

/** What the engine's movement does to a distance, in words; empty when it stands still. */
export const movementWords = (moves: Moves, worst: Approach, nominal: Approach): string => {
  const part = (size: number, words: string): readonly string[] => (size > 0 ? [words] : []);
  const ways = [
    ...part(moves.rock, `rocking ± ${((moves.rock * 180) / Math.PI).toFixed(1)}°`),
    ...part(moves.up, `up ${round1(moves.up)} mm`),
    ...part(moves.down, `down ${round1(moves.down)} mm`),
    ...part(moves.foreAft, `fore and aft ${round1(moves.foreAft)} mm`),
  ];
  if (ways.length === 0) return '';
  const least = Math.min(worst.distance, nominal.distance);
  const where = worst.feature === nominal.feature ? '' : `, there at the ${worst.feature}`;
  return `; ${gapWords(least)} with the engine ${ways.join(', ')}${where}`;
};

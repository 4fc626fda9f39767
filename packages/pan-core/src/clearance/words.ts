import type { Moves } from '../design/index.js';
import type { Approach } from './chassis.js';

export const round1 = (mm: number): string => mm.toFixed(1);

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
  return `, ${round1(Math.min(worst.distance, nominal.distance))} mm with the engine ${ways.join(', ')}`;
};

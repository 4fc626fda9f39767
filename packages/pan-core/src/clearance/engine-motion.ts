import type { Design } from '../design/index.js';
import type { Rotation } from '../geometry/index.js';
import { NO_ROCK, type Rock } from './least-gap.js';
import type { Motion } from './obstacle-form.js';
import { round1 } from './words.js';

/** The engine standing still where the design has it. */
export const motionOf = (toChassis: Rotation): Motion => ({
  toChassis,
  rock: NO_ROCK,
  moves: null,
  shift: [0, 0, 0],
});

/** The engine through all its movement on the mountings; null: it rocks about a crank that is not given. */
export const movesOf = (design: Design, toChassis: Rotation): Motion | null => {
  const rock = rockOf(design);
  return rock === null ? null : { toChassis, rock, moves: design.chassis.moves, shift: [0, 0, 0] };
};

const rockOf = (design: Design): Rock | null => {
  const { rock } = design.chassis.moves;
  if (rock === 0) return NO_ROCK;
  const { crank } = design.engine;
  return crank === null ? null : { height: crank.centreAboveRail, angle: rock };
};

/** How the engine moves, in words; empty when it stands still. */
export const movementWords = ({ chassis: { moves } }: Design): string => {
  const part = (size: number, words: string): readonly string[] => (size > 0 ? [words] : []);
  return [
    ...part(moves.rock, `rocking ± ${((moves.rock * 180) / Math.PI).toFixed(1)}° about the crank`),
    ...part(moves.up, `up ${round1(moves.up)} mm`),
    ...part(moves.down, `down ${round1(moves.down)} mm`),
    ...part(moves.foreAft, `fore and aft ${round1(moves.foreAft)} mm`),
  ].join(', ');
};

import { randomFrom } from './random.js';

/** The seed of a random test: PAN_SEED, or the one written in the test. */
export const seedOr = (usual: number): number => {
  const told = Number(process.env.PAN_SEED);
  return Number.isInteger(told) && told > 0 ? told : usual;
};

export interface Dice {
  readonly between: (low: number, high: number) => number;
  /** A multiple of `step` from low to high, both ends included. */
  readonly stepped: (low: number, high: number, step: number) => number;
  readonly happens: (chance: number) => boolean;
}

export const diceFrom = (seed: number): Dice => {
  const next = randomFrom(seed);
  return {
    between: (low, high) => low + (high - low) * next(),
    stepped: (low, high, step) => low + step * Math.floor(next() * (Math.floor((high - low) / step) + 1)),
    happens: (chance) => next() < chance,
  };
};

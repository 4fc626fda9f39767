/** Numbers from 0 up to 1, the same for the same seed: Steele, Lea and Flood's 32-bit mixer on a counter. */
export const chanceFrom = (seed: number): (() => number) => {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x9e3779b9) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 16), 0x85ebca6b);
    mixed = Math.imul(mixed ^ (mixed >>> 13), 0xc2b2ae35);
    return ((mixed ^ (mixed >>> 16)) >>> 0) / 2 ** 32;
  };
};

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
  const next = chanceFrom(seed);
  return {
    between: (low, high) => low + (high - low) * next(),
    stepped: (low, high, step) => low + step * Math.floor(next() * (Math.floor((high - low) / step) + 1)),
    happens: (chance) => next() < chance,
  };
};

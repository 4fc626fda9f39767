/**
 * A stream of numbers in [0, 1) that is the same for the same seed on every machine: a counter stepped by an
 * odd constant and mixed by shifts and products of 32 bits (Steele, Lea and Flood, "Fast splittable
 * pseudorandom number generators", 2014; constants of its 32-bit form from memory).
 */
export const seededStream = (seed: number): (() => number) => {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x9e3779b9) >>> 0;
    let mixed = state ^ (state >>> 16);
    mixed = Math.imul(mixed, 0x85ebca6b);
    mixed ^= mixed >>> 13;
    mixed = Math.imul(mixed, 0xc2b2ae35);
    mixed ^= mixed >>> 16;
    return (mixed >>> 0) / 4294967296;
  };
};

import type { Trial } from './trial.js';

/**
 * Places about one, each coordinate moved by a normal deviate (Box and Muller, Annals of Mathematical Statistics 29,
 * 1958); past an end of the range it is turned back, half as far as it went over.
 *
 * @param spread standard deviation, as a share of each range
 */
export const cloudAbout = (
  { at }: Trial,
  count: number,
  spread: number,
  random: () => number,
): readonly (readonly number[])[] =>
  Array.from({ length: count }, () => at.map((x) => turnedBack(x + spread * deviate(random))));

const deviate = (random: () => number): number =>
  Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());

const turnedBack = (x: number): number => {
  if (x < 0) return Math.min(1, -x / 2);
  return x > 1 ? Math.max(0, 1 - (x - 1) / 2) : x;
};

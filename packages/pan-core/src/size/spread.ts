const PRIMES = [2, 3, 5, 7, 11, 13, 17, 19, 23, 29, 31, 37, 41, 43, 47, 53];

/**
 * Points spread evenly through the unit cube: Halton's sequence, one prime a direction, each shifted round by
 * its own amount so that a seed moves them (Halton, Numerische Mathematik 2, 1960; Cranley and Patterson 1976
 * for the shift).
 */
export const spreadPoints = (count: number, shifts: readonly number[]): readonly (readonly number[])[] =>
  Array.from({ length: count }, (_, k) =>
    shifts.map((shift, i) => (reversed(k + 1, PRIMES[i % PRIMES.length] as number) + shift) % 1),
  );

/** The digits of a whole number mirrored about the point. */
const reversed = (whole: number, base: number): number => {
  let [left, digit, value] = [whole, 1 / base, 0];
  while (left > 0) {
    value += (left % base) * digit;
    left = Math.floor(left / base);
    digit /= base;
  }
  return value;
};

import { freeze } from '../numeric/index.js';

/** A side of a seam that goes right round, mm. */
export interface SeamSide {
  readonly name: string;
  readonly length: number;
}

/** A short run: `from` and `to` along its side, mm from the side's middle, negative to the left of it. */
export interface Run {
  readonly side: string;
  readonly from: number;
  readonly to: number;
}

/**
 * Runs no longer than `most`, one on each side in turn, every side from its middle outwards, left and right
 * by turns: heat is spread and shrinks against cold metal.
 *
 * @param sides in the order of turns: one end, the other end, one side, the other side
 */
export const runOrder = (sides: readonly SeamSide[], most: number): readonly Run[] => {
  const rows = sides.map(({ name, length }) => {
    const count = Math.max(1, Math.ceil(length / most));
    const step = length / count;
    return outward(count).map(
      (k): Run => ({ side: name, from: k * step - length / 2, to: (k + 1) * step - length / 2 }),
    );
  });
  const longest = Math.max(0, ...rows.map((row) => row.length));
  return freeze(
    Array.from({ length: longest }, (_, i) =>
      rows.flatMap((row) => (row[i] === undefined ? [] : [row[i]])),
    ).flat(),
  );
};

/** 0 to n − 1 from the middle outwards. */
const outward = (n: number): readonly number[] => {
  const middle = (n - 1) / 2;
  return Array.from({ length: n }, (_, k) => k).sort(
    (a, b) => Math.abs(a - middle) - Math.abs(b - middle) || a - b,
  );
};

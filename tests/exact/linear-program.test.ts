import { solveLinear } from 'pan-core/numeric/index.js';
import { smallestHittingSet } from 'pan-core/size/hitting-set.js';
import { describe, expect, it } from 'vitest';
import { expectWithin } from '../numbers.js';
import { randomFrom } from '../random.js';

describe('a linear program', () => {
  it('answers the glass works of the textbook', () => {
    // Hillier and Lieberman, Introduction to Operations Research, prototype example: 3x + 5y most, at (2, 6),
    // 36, shadow prices 0, 3/2, 1 (from memory).
    const { x, short, worth } = solveLinear({
      cost: [-3, -5],
      rows: [
        [1, 0],
        [0, 2],
        [3, 2],
      ],
      bounds: [4, 12, 18],
    });
    expect(short).toBe(0);
    [2, 6].forEach((value, i) => {
      expectWithin(x[i] as number, value, 1e-12);
    });
    [0, 1.5, 1].forEach((value, i) => {
      expectWithin(worth[i] as number, value, 1e-12);
    });
  });

  it('lets rows that contradict each other miss by the same least amount', () => {
    // x ≤ 1 and x ≥ 3: half way between, each short by 1.
    const { x, short } = solveLinear({ cost: [1], rows: [[1], [-1]], bounds: [1, -3] });
    expectWithin(short, 1, 1e-12);
    expectWithin(x[0] as number, 2, 1e-12);
  });

  it('starts from a corner that does not hold and still finds the best', () => {
    // x + y ≥ 4, x ≤ 3, y ≤ 3, least 2x + y: (1, 3), 5.
    const { x, short } = solveLinear({
      cost: [2, 1],
      rows: [
        [-1, -1],
        [1, 0],
        [0, 1],
      ],
      bounds: [-4, 3, 3],
    });
    expect(short).toBe(0);
    expectWithin(x[0] as number, 1, 1e-12);
    expectWithin(x[1] as number, 3, 1e-12);
  });
});

describe('a smallest hitting set', () => {
  it('is as small as trying every choice says', () => {
    const random = randomFrom(20261125);
    const names = ['a', 'b', 'c', 'd', 'e', 'f'];
    for (let run = 0; run < 200; run++) {
      const sets = Array.from({ length: 6 }, () => new Set(names.filter(() => random() < 0.4))).filter(
        ({ size }) => size > 0,
      );
      const found = smallestHittingSet(sets) ?? [];
      expect(sets.every((one) => found.some((name) => one.has(name)))).toBe(true);
      let least = names.length;
      for (let bits = 0; bits < 64; bits++) {
        const chosen = names.filter((_, i) => (bits >> i) & 1);
        if (sets.every((one) => chosen.some((name) => one.has(name)))) least = Math.min(least, chosen.length);
      }
      expect(found.length, `seed 20261125, run ${run}`).toBe(least);
    }
  });

  it('is none where something misses nothing', () => {
    expect(smallestHittingSet([new Set(['a']), new Set()])).toBeNull();
  });
});

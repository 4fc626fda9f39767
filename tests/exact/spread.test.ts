import { spread } from 'pan-core/drawing/page/spread.js';
import { describe, expect, it } from 'vitest';

describe('labels spread along a line', () => {
  it.each([
    [[0, 10, 20], 5, [0, 10, 20]],
    [[10, 10], 4, [8, 12]],
    [[0, 1, 2], 3, [-2, 1, 4]],
    [[], 3, []],
  ])('%j, %d apart: %j', (wished, gap, expected) => expect(spread(wished, gap)).toEqual(expected));

  it('stay inside their limits where they fit', () => {
    expect(spread([0, 0, 0], 3, 0, 20)).toEqual([0, 3, 6]);
    expect(spread([20, 20], 3, 0, 20)).toEqual([17, 20]);
  });
});

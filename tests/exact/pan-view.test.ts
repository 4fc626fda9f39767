import { isDrawn, isSeen, parted, sightFrom, type ViewFace } from 'pan-core/drawing/bench/pan-view.js';
import type { Vec3 } from 'pan-core/numeric/index.js';
import { describe, expect, it } from 'vitest';
import { expectWithin } from '../numbers.js';

/** A box from 0 to 100, open at the top, seen as sheet: normals out of it. */
const quad = (name: string, outward: Vec3, ...loop: readonly Vec3[]): ViewFace => ({
  name,
  loop,
  outward,
  edges: loop.map(() => 'drawn' as const),
});
const BOX: readonly ViewFace[] = [
  quad('floor', [0, 0, -1], [0, 0, 0], [0, 100, 0], [100, 100, 0], [100, 0, 0]),
  quad('front', [1, 0, 0], [100, 0, 0], [100, 100, 0], [100, 100, 100], [100, 0, 100]),
  quad('rear', [-1, 0, 0], [0, 0, 0], [0, 0, 100], [0, 100, 100], [0, 100, 0]),
  quad('left', [0, 1, 0], [0, 100, 0], [0, 100, 100], [100, 100, 100], [100, 100, 0]),
  quad('right', [0, -1, 0], [0, 0, 0], [100, 0, 0], [100, 0, 100], [0, 0, 100]),
];
// From ahead, left and above, as steep as wide: what is seen is plain from the diagonal.
const sight = sightFrom([1, 1, 1]);

describe('what is seen of an open box along its diagonal', () => {
  it.each([
    ['middle of the front, outside', [100, 50, 50], true],
    ['middle of the left, outside', [50, 100, 50], true],
    ['high on the rear, over the front', [0, 50, 60], true],
    ['low on the rear, behind the front', [0, 50, 40], false],
    ['middle of the floor', [50, 50, 0], false],
    ['a corner of the floor that the rim hides', [0, 0, 0], false],
  ] as const)('%s', (_, p, seen) => expect(isSeen(sight, BOX, p)).toBe(seen));

  it('a weld inside is not seen through the face it lies on, and one outside not from within', () => {
    expect(isSeen(sight, BOX, [100, 50, 50], 'inside')).toBe(false);
    expect(isSeen(sight, BOX, [100, 50, 50], 'outside')).toBe(true);
    expect(isSeen(sight, BOX, [0, 50, 60], 'inside')).toBe(true);
    expect(isSeen(sight, BOX, [0, 50, 60], 'outside')).toBe(false);
  });

  it('parts an upright line on the rear where the front’s rim begins to hide it', () => {
    const [low, high] = parted(
      [
        [0, 50, 0],
        [0, 50, 100],
      ],
      (p) => isSeen(sight, BOX, p),
    );
    expect([low!.seen, high!.seen]).toEqual([false, true]);
    // The line of sight over the rim at z 100 falls 100 on its way over 100 along; but y too moves by 100, past the
    // box's left side, whose rim hides what is lower than 50.
    expectWithin(high!.ends[0][2], 50, 100 / 32, 'where it begins, a piece');
  });

  it('draws a bend’s edge only where the bend turns away', () => {
    const [face] = BOX;
    const bend = (beyond: Vec3): ViewFace => ({ ...face!, edges: [{ beyond }, null, null, null] });
    expect(isDrawn(sight, bend([0.5, 0, -0.9]), 0)).toBe(false);
    expect(isDrawn(sight, bend([0.9, 0, -0.5]), 0)).toBe(true);
    expect(isDrawn(sight, bend([0.9, 0, -0.5]), 1)).toBe(false);
  });
});

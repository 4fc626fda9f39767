import { isClear, leastSpare, type RoomPair, roomPairs } from 'pan-core/clearance/room-space.js';
import { floorProfile, outerSolids } from 'pan-core/pan/index.js';
import { expect, test } from 'vitest';
import { sampleDesign } from '../sample-design.js';
import { boxTriangles, scanOf } from '../scan-of.js';

// The other way to the same answers: every pair asked afresh at every shift.
test('what earlier looks settle is what a new look would have told', () => {
  const design = sampleDesign((d) => {
    const soup = scanOf(boxTriangles([356, -400, -180], [450, 400, -67]));
    const low = scanOf(boxTriangles([100, -60, -330], [200, 60, -230]));
    d.chassis.obstacles = [
      { name: 'crossmember', shape: soup, clear: 15, plusMinus: 2 },
      { name: 'link', shape: low, clear: 12, plusMinus: 2 },
    ] as typeof d.chassis.obstacles;
  });
  const pairs = (
    roomPairs(design, outerSolids(design, floorProfile(design)), (row) => row.usual, 60) ?? []
  ).filter(({ between }) => between !== undefined);
  expect(pairs.length).toBeGreaterThan(1);
  let looks = 0;
  const counted = pairs.map(
    (pair): RoomPair => ({
      ...pair,
      spare: (shift) => {
        looks++;
        return pair.spare(shift);
      },
    }),
  );
  const afresh = (roomPairs(design, outerSolids(design, floorProfile(design)), (row) => row.usual, 60) ?? [])
    .filter(({ between }) => between !== undefined)
    .map(({ name, obstacle, wants, spare }): RoomPair => ({ name, obstacle, wants, spare }));
  let asked = 0;
  const seen = new Set<boolean>();
  for (let x = -40; x <= 40; x += 8) {
    for (let z = -40; z <= 40; z += 8) {
      const clear = isClear(afresh, [x, z]);
      seen.add(clear);
      expect(isClear(counted, [x, z])).toBe(clear);
      expect(leastSpare(counted, [x, z])).toEqual(leastSpare(afresh, [x, z]));
      asked += 2 * pairs.length;
    }
  }
  expect(seen.size).toBe(2);
  expect(looks).toBeLessThan(0.8 * asked);
});

test('a dear pair is asked last, and no further than what the others leave open', () => {
  const told: number[] = [];
  const pair = (name: string, room: number, isDear: boolean): RoomPair => ({
    name,
    obstacle: name,
    wants: 17,
    spare: (_, enough = Number.POSITIVE_INFINITY) => {
      if (isDear) told.push(enough);
      return room;
    },
    ...(isDear ? { between: () => [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY] as const } : {}),
  });
  const [scan, near, far] = [pair('scan', -17, true), pair('near', -17, false), pair('far', 30, false)];
  // Of two that are equal the first in the list binds, or the hint.
  expect(leastSpare([scan, near, far], [0, 0])).toEqual({ spare: -17, binds: 0 });
  expect(leastSpare([scan, near, far], [0, 0], 1)).toEqual({ spare: -17, binds: 1 });
  expect(leastSpare([near, scan], [0, 0], 1)).toEqual({ spare: -17, binds: 1 });
  for (const enough of told) expect(enough).toBeLessThan(-17 + 1e-6);
  const asked = told.length;
  expect(isClear([scan, near], [0, 0])).toBe(false);
  expect(told).toHaveLength(asked);
  expect(isClear([scan, far], [0, 0])).toBe(false);
  expect(told).toHaveLength(asked + 1);
});

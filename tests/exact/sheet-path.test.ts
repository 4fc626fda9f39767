import {
  arcThrough,
  circlePath,
  clockwise,
  isClosed,
  movePath,
  type Path,
  pathArea,
  pathBox,
  pathDistance,
  pathGap,
  pathLength,
  pointInPath,
  polygonOffset,
  polylinePath,
  regionPieces,
  reversePath,
  roundedPath,
  segmentDistance,
  segmentMeetings,
  selfCrossings,
  subtractPath,
  tangentArc,
} from 'pan-core/geometry/index.js';
import { describe, expect, test } from 'vitest';
import { expectWithin } from '../numbers.js';

const box = (x0: number, y0: number, x1: number, y1: number): Path =>
  polylinePath(
    [
      [x0, y0],
      [x1, y0],
      [x1, y1],
      [x0, y1],
    ],
    true,
  );

const area = (region: { readonly loops: readonly Path[] }): number =>
  region.loops.reduce((sum, loop) => sum + pathArea(loop), 0);

describe('length, area and box', () => {
  test('a circle has 2πr, πr² and its diameter', () => {
    const circle = circlePath([1e4, -3e3], 7);
    expectWithin(pathLength(circle), 14 * Math.PI, 1e-12, 'length');
    expectWithin(pathArea(circle), 49 * Math.PI, 1e-10, 'area');
    const { min, max } = pathBox(circle);
    expectWithin(max[1] - min[1], 14, 1e-9, 'box');
  });

  test('a square with rounded corners loses (4 − π)r² and (8 − 2π)r', () => {
    const path = roundedPath(
      [
        [0, 0],
        [50, 0],
        [50, 40],
        [0, 40],
      ].map((at) => ({ at: [at[0]!, at[1]!] as const, radius: 6 })),
    );
    expect(isClosed(path)).toBe(true);
    expectWithin(pathArea(path), 2000 - (4 - Math.PI) * 36, 1e-10, 'area');
    expectWithin(pathLength(path), 180 - (8 - 2 * Math.PI) * 6, 1e-10, 'length');
    expect(pathBox(path)).toEqual({ min: [0, 0], max: [50, 40] });
  });

  test('reversing and mirroring turn the sign of the area and nothing else', () => {
    const path = roundedPath([
      { at: [0, 0], radius: 0 },
      { at: [50, 10], radius: 5 },
      { at: [20, 40], radius: 3 },
    ]);
    const a = pathArea(path);
    expectWithin(pathArea(reversePath(path)), -a, 1e-10, 'reversed');
    expectWithin(
      pathArea(movePath({ mirror: 'x', turn: 0.3, shift: [100, -20] }, path)),
      -a,
      1e-9,
      'mirrored',
    );
    expectWithin(pathArea(movePath({ turn: 2, shift: [5, 5] }, path)), a, 1e-9, 'turned');
  });

  test('a quarter arc by tangent and by three points is the same', () => {
    const h = Math.SQRT1_2 * 10;
    const arcs = [tangentArc([10, 0], [0, 1], [0, 10]), arcThrough([10, 0], [h, h], [0, 10])];
    for (const arc of arcs) {
      expect(arc.kind).toBe('arc');
      if (arc.kind !== 'arc') continue;
      expectWithin(arc.sweep, Math.PI / 2, 1e-14, 'sweep');
      expectWithin(arc.radius, 10, 1e-13, 'radius');
    }
  });

  test('a large arc reaches past three quarter points', () => {
    const arc = arcThrough([10, 0], [-10, 0], [0, -10]);
    expect(pathBox([arc])).toEqual({ min: [-10, -10], max: [10, 10] });
  });
});

describe('meeting, distance and inside', () => {
  test('a line through a circle meets it at the chord’s ends', () => {
    const meetings = circlePath([0, 0], 5).flatMap((s) =>
      segmentMeetings({ kind: 'line', from: [-10, 3], to: [10, 3] }, s).map((m) => m.a * 20 - 10),
    );
    expect(meetings.sort((a, b) => a - b)).toHaveLength(2);
    expectWithin(meetings[0]!, -4, 1e-12, 'first');
    expectWithin(meetings[1]!, 4, 1e-12, 'second');
  });

  test('a bow tie crosses itself once, a rectangle never', () => {
    const bow = polylinePath(
      [
        [0, 0],
        [10, 10],
        [10, 0],
        [0, 10],
      ],
      true,
    );
    expect(selfCrossings(bow)).toHaveLength(1);
    expect(selfCrossings(box(0, 0, 10, 10))).toHaveLength(0);
  });

  test('two circles stand apart by what their radii leave', () => {
    expectWithin(pathGap(circlePath([0, 0], 5), circlePath([30, 40], 7)), 38, 1e-12, 'apart');
    expectWithin(pathGap(circlePath([0, 0], 20), circlePath([3, 4], 7)), 8, 1e-12, 'one in the other');
    const far: Path = [{ kind: 'line', from: [-50, 20], to: [50, 20] }];
    expectWithin(segmentDistance(far[0]!, circlePath([0, 0], 5)[0]!), 15, 1e-12, 'line above');
    expectWithin(pathDistance(box(0, 0, 10, 10), [13, 14]), 5, 1e-14, 'corner');
  });

  test('inside, outside and edge, between an arc and its chord too', () => {
    const circle = circlePath([0, 0], 10);
    expect(pointInPath(circle, [0, 0])).toBe('inside');
    expect(pointInPath(circle, [0, 9.99])).toBe('inside');
    expect(pointInPath(circle, [7.08, 7.08])).toBe('outside');
    expect(pointInPath(circle, [6, 8])).toBe('edge');
    const bite = subtractPath({ loops: [box(0, 0, 20, 20)] }, circle).loops[0]!;
    expect(pointInPath(bite, [5, 5])).toBe('outside');
    expect(pointInPath(bite, [8, 8])).toBe('inside');
  });
});

describe('offset', () => {
  test('a polygon grown by d gains perimeter·d + πd², its corners true arcs', () => {
    const points = [
      [0, 0],
      [60, 10],
      [50, 70],
      [-5, 40],
    ].map(([x, y]) => [x!, y!] as const);
    const path = polylinePath(points, true);
    const grown = polygonOffset(points, 3.2);
    expectWithin(pathArea(grown), pathArea(path) + pathLength(path) * 3.2 + Math.PI * 3.2 ** 2, 1e-9, 'area');
    expect(grown.filter((s) => s.kind === 'arc')).toHaveLength(4);
  });

  test('an inward corner stays sharp', () => {
    const points = [
      [0, 0],
      [30, 0],
      [30, 30],
      [20, 30],
      [20, 10],
      [0, 10],
    ].map(([x, y]) => [x!, y!] as const);
    const grown = polygonOffset(points, 2);
    expect(grown.filter((s) => s.kind === 'arc')).toHaveLength(5);
    // 120 mm around, five quarter arcs out and one mitred corner in.
    expectWithin(pathArea(grown), 500 + 2 * 120 + (5 * Math.PI * 4) / 4 - 4, 1e-10, 'area');
  });
});

describe('taking one shape out of another', () => {
  const plate = { loops: [box(0, 0, 100, 50)] };

  test('a hole, a bite, a slot that parts it, and a miss', () => {
    const hole = subtractPath(plate, box(20, 10, 40, 30));
    expect(hole.loops).toHaveLength(2);
    expectWithin(area(hole), 4600, 1e-9, 'hole');
    const bite = subtractPath(plate, box(20, -10, 40, 30));
    expect(bite.loops).toHaveLength(1);
    expectWithin(area(bite), 4400, 1e-9, 'bite');
    const parted = subtractPath(plate, box(20, -10, 40, 60));
    expect(regionPieces(parted)).toHaveLength(2);
    expectWithin(area(parted), 4000, 1e-9, 'parted');
    expectWithin(area(subtractPath(plate, box(200, 0, 210, 10))), 5000, 1e-9, 'miss');
  });

  test('edges that lie on one another are neither lost nor doubled', () => {
    const flush = subtractPath(plate, box(20, 0, 40, 30));
    expect(flush.loops).toHaveLength(1);
    expect(flush.loops[0]).toHaveLength(8);
    expectWithin(area(flush), 4400, 1e-9, 'flush with the edge');
    const beside = subtractPath(plate, box(20, -30, 40, 0));
    expect(beside.loops[0]).toHaveLength(4);
    expectWithin(area(beside), 5000, 1e-9, 'touching from outside');
    const corner = subtractPath(plate, box(0, 0, 30, 20));
    expect(corner.loops[0]).toHaveLength(6);
    expectWithin(area(corner), 4400, 1e-9, 'in the corner');
    expect(subtractPath(plate, box(0, 0, 100, 50)).loops).toHaveLength(0);
  });

  test('two cuts side by side leave no seam between them', () => {
    const both = subtractPath(subtractPath(plate, box(20, -5, 40, 30)), box(40, -5, 70, 30));
    expect(both.loops).toHaveLength(1);
    expect(both.loops[0]).toHaveLength(8);
    expectWithin(area(both), 3500, 1e-9, 'area');
  });

  test('arcs stay arcs on both sides of the cut', () => {
    const disc = { loops: [circlePath([0, 0], 30)] };
    const half = subtractPath(disc, box(-40, 0, 40, 40));
    expectWithin(area(half), (Math.PI * 900) / 2, 1e-9, 'half disc');
    const ring = subtractPath(disc, circlePath([0, 0], 10));
    expectWithin(area(ring), Math.PI * 800, 1e-9, 'ring');
    expect(ring.loops.flat().every((s) => s.kind === 'arc')).toBe(true);
    // Two unit circles a unit apart share 2π/3 − √3/2.
    const moon = subtractPath({ loops: [circlePath([0, 0], 1)] }, circlePath([1, 0], 1));
    expectWithin(area(moon), Math.PI - ((2 * Math.PI) / 3 - Math.sqrt(3) / 2), 1e-9, 'moon');
    expect(pathArea(clockwise(moon.loops[0]!))).toBeLessThan(0);
  });
});

import { hullOfShape } from 'pan-core/clearance/obstacle-hull.js';
import { hullGap, largestSwing, type RoundHull, swingBy } from 'pan-core/geometry/index.js';
import { nearestInSimplex } from 'pan-core/geometry/nearest-simplex.js';
import { describe, expect, test } from 'vitest';
import { expectWithin } from '../numbers.js';

type P = readonly [number, number, number];

const box = (min: P, max: P): RoundHull => hullOfShape({ kind: 'box', min, max });
const rod = (from: P, to: P, diameter: number, travel: P = [0, 0, 0]): RoundHull =>
  hullOfShape({ kind: 'rod', from, to, diameter, travel });
const apart = (a: RoundHull, b: RoundHull): number =>
  hullGap(a.points, b.points).distance - a.radius - b.radius;

const unitBox = box([0, 0, 0], [100, 200, 50]);

// Closed forms by hand; 1e-9 mm is a million times finer than any measurement and far above rounding.
describe('two bodies apart', () => {
  test.each<[string, RoundHull, number]>([
    ['face to face', box([112, 20, 10], [300, 90, 40]), 12],
    ['face to a wider face', box([-500, -500, -80], [500, 500, -7.25]), 7.25],
    ['edge to edge', box([103, 204, -10], [300, 500, 60]), 5],
    ['crossing edges', box([103, 204, 0], [110, 210, 50]), 5],
    ['corner to corner', box([102, 203, 56], [110, 210, 60]), 7],
    ['a rod along a face', rod([110, 20, 25], [110, 180, 25], 12), 4],
    ['a rod askew past an edge', rod([130, -40, 75], [130, 300, 75], 10), Math.hypot(30, 25) - 5],
    ['a rod ending at a corner', rod([110, 210, 60], [500, 900, 400], 8), Math.sqrt(300) - 4],
    ['a rod ending over a face', rod([50, 100, 80], [50, 100, 400], 20), 20],
    ['a rod that slides towards', rod([150, 20, 25], [150, 180, 25], 12, [30, 0, 0]), 14],
    ['a rod that slides along itself', rod([110, 80, 25], [110, 120, 25], 12, [0, 70, 0]), 4],
  ])('%s', (what, other, expected) => {
    expectWithin(apart(unitBox, other), expected, 1e-9, what);
    expectWithin(apart(other, unitBox), expected, 1e-9, `${what}, the other way`);
  });

  test('skew rods stand apart by the length of their common perpendicular', () => {
    const a = rod([-50, 0, 0], [50, 0, 0], 6);
    const b = rod([0, -40, 17], [10, 60, 17], 4);
    expectWithin(apart(a, b), 12, 1e-9);
  });

  test('the nearest points and the direction lie where they must', () => {
    const gap = hullGap(unitBox.points, box([103, 204, -10], [300, 500, 60]).points);
    expectWithin(gap.onA[0], 100, 1e-9);
    expectWithin(gap.onA[1], 200, 1e-9);
    expectWithin(gap.onB[0], 103, 1e-9);
    expectWithin(gap.onB[1], 204, 1e-9);
    expectWithin(gap.toward[0], 0.6, 1e-12);
    expectWithin(gap.toward[1], 0.8, 1e-12);
    expectWithin(gap.toward[2], 0, 1e-12);
  });

  test('bodies that overlap, touch or hold one another are no distance apart', () => {
    expect(hullGap(unitBox.points, box([50, 50, 20], [60, 60, 30]).points).distance).toBe(0);
    expect(hullGap(unitBox.points, box([100, 0, 0], [160, 60, 30]).points).distance).toBe(0);
    expect(hullGap(unitBox.points, box([-1, 5, 5], [101, 6, 6]).points).distance).toBe(0);
  });

  test('far from the origin nothing is lost', () => {
    const far: P = [1e5, -2e5, 3e5];
    const moved = (h: RoundHull): RoundHull => ({
      radius: h.radius,
      points: h.points.map((p): P => [p[0] + far[0], p[1] + far[1], p[2] + far[2]]),
    });
    expectWithin(apart(moved(unitBox), moved(box([103, 204, -10], [300, 500, 60]))), 5, 1e-9);
  });
});

describe('the nearest point of a simplex to the origin', () => {
  test.each<[string, readonly P[], P]>([
    [
      'a corner',
      [
        [2, 1, 0],
        [5, 1, 0],
        [2, 4, 0],
      ],
      [2, 1, 0],
    ],
    [
      'an edge',
      [
        [-1, 3, 0],
        [4, 3, 0],
        [0, 9, 0],
      ],
      [0, 3, 0],
    ],
    [
      'the third edge',
      [
        [-3, -3, 2],
        [5, -1, 2],
        [-1, 5, 2],
      ].map(([x, y, z]): P => [x! + 4, y! + 4, z!]),
      [0, 0, 0],
    ],
    [
      'a face',
      [
        [-1, -1, 2],
        [3, -1, 2],
        [-1, 3, 2],
      ],
      [0, 0, 2],
    ],
    [
      'the face of a tetrahedron',
      [
        [-1, -1, 2],
        [3, -1, 2],
        [-1, 3, 2],
        [0, 0, 7],
      ],
      [0, 0, 2],
    ],
    [
      'its inside',
      [
        [-1, -1, -1],
        [3, -1, -1],
        [-1, 3, -1],
        [0, 0, 7],
      ],
      [0, 0, 0],
    ],
  ])('%s', (what, corners, expected) => {
    const { point, weights } = nearestInSimplex(corners);
    const nearest = what === 'the third edge' ? footOnTriangle(corners) : expected;
    for (const k of [0, 1, 2] as const) {
      expectWithin(point[k], nearest[k], 1e-12);
      expectWithin(
        corners.reduce((sum, p, i) => sum + weights[i]! * p[k], 0),
        nearest[k],
        1e-12,
      );
    }
    expect(Math.min(...weights)).toBeGreaterThanOrEqual(0);
  });
});

/** Nearest point of a triangle by a fine walk along its edges; the foot is known to lie outside. */
const footOnTriangle = (t: readonly P[]): P => {
  let best: P = t[0]!;
  t.forEach((a, i) => {
    const b = t[(i + 1) % 3]!;
    const e: P = [b[0] - a[0], b[1] - a[1], b[2] - a[2]];
    const s = -(a[0] * e[0] + a[1] * e[1] + a[2] * e[2]) / (e[0] ** 2 + e[1] ** 2 + e[2] ** 2);
    const u = Math.min(1, Math.max(0, s));
    const p: P = [a[0] + u * e[0], a[1] + u * e[1], a[2] + u * e[2]];
    if (Math.hypot(...p) < Math.hypot(...best)) best = p;
  });
  return best;
};

test('the largest of U cos t + V sin t over a swing is that of ten thousand samples', () => {
  for (const [u, v, half] of [
    [3, 1, 0.5],
    [3, 1, 0.1],
    [3, -1, 0.5],
    [-3, 1, 0.4],
    [0, 2, 0.3],
    [5, 0, 0.2],
  ] as const) {
    let most = Number.NEGATIVE_INFINITY;
    for (let i = -5000; i <= 5000; i++) {
      const t = (half * i) / 5000;
      most = Math.max(most, u * Math.cos(t) + v * Math.sin(t));
    }
    // A sample misses a peak by at most size·step²/8.
    expectWithin(largestSwing(u, v, swingBy(half)), most, 1e-8);
  }
});

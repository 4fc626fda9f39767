import {
  bulgeCurve,
  type Curve,
  circleCurve,
  circleThrough,
  curveChords,
  joinLines,
  mapArea,
  mapGrowth,
  mapPoint,
  moveCurve,
  nurbsFault,
  nurbsPoint,
  simplifyLoop,
  splineThrough,
  thenMap,
  turnMap,
} from 'pan-core/geometry/index.js';
import { describe, expect, it } from 'vitest';
import { expectWithin } from '../numbers.js';

type Point = readonly [number, number];

const area = (loop: readonly Point[]): number =>
  loop.reduce((sum, [x, y], i) => {
    const [nextX, nextY] = loop[(i + 1) % loop.length] as Point;
    return sum + (x * nextY - nextX * y) / 2;
  }, 0);

/** A full circle of radius 10 as a quadratic spline of nine points: the textbook form (Piegl and Tiller, fig. 7.16). */
const h = Math.SQRT1_2;
const splineCircle: Curve = {
  kind: 'nurbs',
  degree: 2,
  knots: [0, 0, 0, 1, 1, 2, 2, 3, 3, 4, 4, 4],
  points: [
    [10, 0],
    [10, 10],
    [0, 10],
    [-10, 10],
    [-10, 0],
    [-10, -10],
    [0, -10],
    [10, -10],
    [10, 0],
  ],
  weights: [1, h, 1, h, 1, h, 1, h, 1],
};

describe('curves as chords', () => {
  it('a bulge is the tangent of a quarter of the sweep', () => {
    // Half a turn over a chord of 20: the lowest point lies 10 below it, counter-clockwise from left to right.
    const points = curveChords(bulgeCurve([-10, 0], [10, 0], 1), 0.01);
    expectWithin(Math.min(...points.map(([, y]) => y)), -10, 0.011);
    for (const [x, y] of points) expectWithin(Math.hypot(x, y), 10, 1e-12);
    // A quarter turn: tan(π/8), sagitta r·(1 − cos 45°) on the right of a clockwise one.
    const quarter = curveChords(bulgeCurve([0, 0], [10, 10], -Math.tan(Math.PI / 8)), 0.01);
    for (const [x, y] of quarter) expectWithin(Math.hypot(x - 10, y), 10, 1e-9);
    expect(curveChords(bulgeCurve([0, 0], [5, 0], 0), 0.01)).toEqual([
      [0, 0],
      [5, 0],
    ]);
  });

  it.each([0.2, 0.05, 0.004])('a circle of 40 stays within %s mm of its chords', (tolerance) => {
    const points = curveChords(circleCurve([3, 4], 40), tolerance);
    for (let i = 0; i + 1 < points.length; i++) {
      const [[ax, ay], [bx, by]] = [points[i] as Point, points[i + 1] as Point];
      const middle = Math.hypot((ax + bx) / 2 - 3, (ay + by) / 2 - 4);
      // Sagitta of the chord.
      expect(40 - middle).toBeLessThanOrEqual(tolerance + 1e-12);
      // And not many times more chords than that needs.
      expect(40 - middle).toBeGreaterThan(tolerance / 4);
    }
  });

  it('a weighted spline is the circle it stands for, and stays within its chords', () => {
    expect(nurbsFault(splineCircle as Extract<Curve, { kind: 'nurbs' }>)).toBeNull();
    for (let t = 0; t <= 4; t += 0.07) {
      const [x, y] = nurbsPoint(splineCircle as Extract<Curve, { kind: 'nurbs' }>, t);
      expectWithin(Math.hypot(x, y), 10, 1e-12);
    }
    const points = curveChords(splineCircle, 0.02);
    for (let i = 0; i + 1 < points.length; i++) {
      const [[ax, ay], [bx, by]] = [points[i] as Point, points[i + 1] as Point];
      expect(10 - Math.hypot((ax + bx) / 2, (ay + by) / 2)).toBeLessThanOrEqual(0.02);
    }
    const round = circleThrough(points.slice(0, -1));
    expectWithin(round?.diameter, 20, 1e-9);
    expectWithin(round?.at[0], 0, 1e-9);
  });

  it('a cubic spline of one span is its Bézier curve', () => {
    const bezier: Extract<Curve, { kind: 'nurbs' }> = {
      kind: 'nurbs',
      degree: 3,
      knots: [0, 0, 0, 0, 1, 1, 1, 1],
      points: [
        [0, 0],
        [0, 30],
        [40, 30],
        [40, 0],
      ],
      weights: [1, 1, 1, 1],
    };
    for (const t of [0, 0.2, 0.5, 0.9, 1]) {
      const [x, y] = nurbsPoint(bezier, t);
      // Bernstein form, written out.
      expectWithin(x, 3 * (1 - t) * t * t * 40 + t ** 3 * 40, 1e-12);
      expectWithin(y, 3 * (1 - t) ** 2 * t * 30 + 3 * (1 - t) * t * t * 30, 1e-12);
    }
    // Area under it: the integral of y·dx of a cubic, 3/20·(…) = 720 for these points (by hand).
    const points = curveChords(bezier, 1e-4);
    expectWithin(Math.abs(area(points)), 720, 0.01);
  });

  it('an affine map of a curve is the curve of the mapped points', () => {
    const map = thenMap(turnMap(0.4), [2, 0.3, -0.5, -1.5, 7, 9]);
    for (const curve of [circleCurve([1, 2], 5, 0.3, 2.1), splineCircle]) {
      const before = curveChords(curve, 1e-3);
      const after = curveChords(moveCurve(curve, map), 1e-3);
      // Ends are exact whatever lies between.
      const ends = [before[0], before[before.length - 1]].map((p) => mapPoint(map, p as Point));
      expectWithin((after[0] as Point)[0], (ends[0] as Point)[0], 1e-12);
      expectWithin((after[after.length - 1] as Point)[1], (ends[1] as Point)[1], 1e-12);
    }
    // Area of a circle under the map grows by its determinant, and the mapped circle stays within its growth.
    const grown = curveChords(moveCurve(circleCurve([0, 0], 5), map), 1e-5).slice(0, -1);
    expectWithin(area(grown), Math.PI * 25 * mapArea(map), 0.01);
    const reach = Math.max(...grown.map(([x, y]) => Math.hypot(x - 7, y - 9)));
    expectWithin(reach, 5 * mapGrowth(map), 1e-3);
  });
});

describe('lines joined end to end', () => {
  const square: readonly (readonly Point[])[] = [
    [
      [0, 0],
      [10, 0],
    ],
    [
      [10, 10],
      [10, 0.05],
    ],
    [
      [10, 10],
      [0, 10],
    ],
    [
      [0, 0],
      [0, 10],
    ],
  ];

  it('in any direction, with the gap that was closed', () => {
    const { loops, open, gaps, forks } = joinLines(square, 0.1);
    expect([open.length, forks.length]).toEqual([0, 0]);
    expectWithin(Math.abs(area(loops[0] ?? [])), 100, 0.3);
    expect(gaps).toHaveLength(1);
    expectWithin(gaps[0]?.wide, 0.05, 1e-12);
  });

  it('not across a wider gap', () => {
    const { loops, open } = joinLines(square, 0.04);
    expect(loops).toEqual([]);
    expect(open).toHaveLength(1);
  });

  it('a line drawn twice counts once, either way round', () => {
    const again = [...square, [...(square[2] as readonly Point[])].reverse(), square[0] as readonly Point[]];
    const { loops, doubled } = joinLines(again, 0.1);
    expect(loops).toHaveLength(1);
    expect(doubled).toBe(2);
  });

  it('a fork is told and nothing is joined at it', () => {
    const spur: readonly Point[] = [
      [0, 10],
      [-30, 10],
    ];
    const { loops, forks } = joinLines([...square, spur], 0.1);
    expect(loops).toEqual([]);
    expect(forks).toEqual([[0, 10]]);
  });
});

describe('fewer corners', () => {
  it('a straight edge keeps only its ends, a circle all it needs', () => {
    const edge = (a: Point, b: Point): readonly Point[] =>
      Array.from(
        { length: 50 },
        (_, i): Point => [a[0] + ((b[0] - a[0]) * i) / 50, a[1] + ((b[1] - a[1]) * i) / 50],
      );
    const box: Point[] = [
      [0, 0],
      [90, 0],
      [90, 40],
      [0, 40],
    ];
    const fine = box.flatMap((p, i) => edge(p, box[(i + 1) % 4] as Point));
    expect([...simplifyLoop(fine, 0.01)].sort()).toEqual([...box].sort());
    const round = curveChords(circleCurve([0, 0], 50), 1e-4).slice(0, -1);
    const fewer = simplifyLoop(round, 0.05);
    expect(fewer.length).toBeLessThan(round.length / 5);
    expectWithin(area(fewer), Math.PI * 2500, 0.05 * 2 * Math.PI * 50);
  });

  it('corners on a circle are told from a square and from an oval', () => {
    const polygon = (n: number, rx: number, ry: number): readonly Point[] =>
      Array.from(
        { length: n },
        (_, i): Point => [5 + rx * Math.cos((2 * Math.PI * i) / n), 6 + ry * Math.sin((2 * Math.PI * i) / n)],
      );
    expectWithin(circleThrough(polygon(24, 4, 4))?.diameter, 8, 1e-9);
    expect(circleThrough(polygon(4, 4, 4))).toBeNull();
    expect(circleThrough(polygon(40, 4, 4.2))).toBeNull();
    expect(circleThrough(polygon(40, 4, 4).slice(0, 30))).toBeNull();
  });
});

describe('a spline through points', () => {
  const free = { start: null, end: null };
  it('meets each of them with the same slope and bending on both sides, and none at free ends', () => {
    const points: readonly Point[] = [
      [0, 0],
      [10, 4],
      [10, 4],
      [18, -3],
      [40, 7],
    ];
    const curve = splineThrough(points, free);
    if (curve === null) throw new Error('no spline');
    expect(nurbsFault(curve)).toBeNull();
    const at = (t: number, axis: 0 | 1): number => nurbsPoint(curve, t)[axis];
    const knots = [...new Set(curve.knots)];
    expect(knots).toHaveLength(4);
    const step = 1e-3;
    for (const axis of [0, 1] as const) {
      [points[0], points[1], points[3], points[4]].forEach((point, i) => {
        expectWithin(at(knots[i] as number, axis), point?.[axis] ?? Number.NaN, 1e-12);
      });
      // Each span is one cubic: differences on one side give its second derivative there, exact but for rounding.
      const bend = (t: number, d: number): number =>
        (2 * at(t, axis) - 5 * at(t + d, axis) + 4 * at(t + 2 * d, axis) - at(t + 3 * d, axis)) / (d * d);
      expectWithin(bend(knots[0] as number, step), 0, 1e-6);
      expectWithin(bend(knots[3] as number, -step), 0, 1e-6);
      for (const t of knots.slice(1, 3)) {
        expectWithin(bend(t, -step), bend(t, step), 1e-6);
        expectWithin(
          (at(t, axis) - at(t - step, axis)) / step,
          (at(t + step, axis) - at(t, axis)) / step,
          1e-2,
        );
      }
    }
  });

  it('with its ends’ directions keeps to a circle as the fourth power of the spacing', () => {
    const off = (count: number): number => {
      const points = Array.from({ length: count + 1 }, (_, i): Point => {
        const a = (i / count) * (Math.PI / 2);
        return [30 * Math.cos(a), 30 * Math.sin(a)];
      });
      const curve = splineThrough(points, { start: [0, 2], end: [-5, 0] });
      if (curve === null) throw new Error('no spline');
      return Math.max(...curveChords(curve, 1e-5).map(([x, y]) => Math.abs(Math.hypot(x, y) - 30)));
    };
    expect(off(6)).toBeLessThan(0.01);
    expect(off(6) / off(12)).toBeGreaterThan(8);
  });

  it('two points make a straight line, one none', () => {
    const curve = splineThrough(
      [
        [0, 0],
        [6, 8],
      ],
      free,
    );
    for (const t of [0, 2.5, 10]) expectWithin(nurbsPoint(curve as never, t)[0], 0.6 * t, 1e-12);
    expect(
      splineThrough(
        [
          [1, 1],
          [1, 1],
        ],
        free,
      ),
    ).toBeNull();
  });
});

import { bodyOf } from 'pan-core/clearance/body.js';
import { itemSolid } from 'pan-core/clearance/carried.js';
import { motionOf } from 'pan-core/clearance/engine-motion.js';
import { clearances } from 'pan-core/clearance/index.js';
import { formOf, type Motion } from 'pan-core/clearance/obstacle-form.js';
import type { Prism, Scan } from 'pan-core/design/index.js';
import { NO_ROTATION, rigidFit, rotate3, turnsAboutAxes } from 'pan-core/geometry/index.js';
import { floorProfile, outerSolids } from 'pan-core/pan/index.js';
import { describe, expect, test } from 'vitest';
import { expectWithin } from '../numbers.js';
import { sampleDesign } from '../sample-design.js';
import { boxTriangles, type P3, scanOf, type Triangle } from '../scan-of.js';

const body = bodyOf([
  itemSolid({ name: 'block', shape: { kind: 'box', min: [0, 0, 0], max: [100, 80, 60] } }),
]);
const still = motionOf(NO_ROTATION);
const to = (scan: Scan, motion: Motion = still): number => formOf(scan).approach(body, motion).distance;

// Closed forms by hand; a scan's corners here are all exact in single precision.
describe('a box and a scan', () => {
  const flat = (x: number): Triangle => [
    [x, 10, 10],
    [x, 70, 10],
    [x, 10, 50],
  ];
  test.each<[string, readonly Triangle[], number]>([
    ['a triangle beside a face', [flat(112)], 12],
    [
      'an edge past an edge',
      [
        [
          [103, 84, -10],
          [103, 84, 90],
          [200, 200, 0],
        ],
      ],
      5,
    ],
    [
      'a corner off a corner',
      [
        [
          [102, 83, 66],
          [200, 200, 100],
          [150, 300, 200],
        ],
      ],
      7,
    ],
    [
      'the nearest of many, one of them flipped',
      [flat(140), [flat(120)[2], flat(120)[1], flat(120)[0]], flat(130)],
      20,
    ],
    [
      'triangles that are points and lines',
      [
        [
          [109, 40, 30],
          [109, 40, 30],
          [109, 40, 30],
        ],
        [
          [120, 0, 0],
          [130, 0, 0],
          [140, 0, 0],
        ],
      ],
      9,
    ],
    [
      'an open wall poked into by 7',
      [
        [
          [93, 40, 30],
          [200, 20, 30],
          [200, 60, 30],
        ],
      ],
      -7,
    ],
    ['a closed box across an edge, by the lesser way out', boxTriangles([96, 73, 20], [300, 300, 40]), -4],
    [
      'a sheet right through, to the middle plane',
      [
        [
          [-50, -500, 30],
          [300, -500, 30],
          [50, 900, 30],
        ],
      ],
      -30,
    ],
    [
      'a triangle wholly inside',
      [
        [
          [20, 20, 10],
          [30, 20, 12],
          [25, 30, 11],
        ],
      ],
      -12,
    ],
  ])('%s', (what, triangles, expected) => {
    expectWithin(to(scanOf(triangles)), expected, expected < 0 ? 2e-6 : 1e-9, what);
  });

  test('touching is no depth', () => {
    expectWithin(to(scanOf([flat(100)])), 0, 1e-6);
  });

  test('in inches and turned it is where it is put', () => {
    const wall: Triangle = [
      [4, -1, -1],
      [4, 3, -1],
      [4, 1, 3],
    ];
    const inches = { ...scanOf([wall]), unit: { name: 'in' as const, size: 25.4 } };
    expectWithin(to(inches), 4 * 25.4 - 100, 1e-9);
    // A quarter turn about z carries the plane x = 4 in to y = 101.6.
    const rotation = turnsAboutAxes(0, 0, Math.PI / 2);
    expectWithin(to({ ...inches, rotation, origin: [0, 2, 0] }), 101.6 + 2 - 80, 1e-9);
  });

  test('the engine’s movement takes off what it can', () => {
    const moves = { rock: 0, up: 4, down: 2, foreAft: 3 };
    const motion: Motion = { ...still, moves };
    expectWithin(to(scanOf([flat(112)]), motion), 9, 1e-9);
    const below: Triangle = [
      [0, 0, -20],
      [90, 0, -20],
      [0, 70, -20],
    ];
    expectWithin(to(scanOf([below]), motion), 18, 1e-9);
    const above: Triangle = [
      [0, 0, 80],
      [90, 0, 80],
      [0, 70, 80],
    ];
    expectWithin(to(scanOf([above]), motion), 16, 1e-9);
  });

  test('rocking about the crank brings a corner up its arc', () => {
    const angle = (2 * Math.PI) / 180;
    const rocking: Motion = { ...still, rock: { height: 160, angle } };
    const floor: Triangle = [
      [-500, -900, -20],
      [900, -900, -20],
      [0, 2000, -20],
    ];
    // The corner (80, 0) under an axis at height 160: its lowest place is 160·cos + 80·sin below the axis.
    const least = 20 + 160 - (160 * Math.cos(angle) + 80 * Math.sin(angle));
    expectWithin(to(scanOf([floor]), rocking), least, 1e-4);
    expect(to(scanOf([floor]), rocking)).toBeLessThanOrEqual(least + 1e-9);
  });
});

describe('a prism', () => {
  const channel: Prism = {
    kind: 'prism',
    along: 'y',
    // A U that opens upward round the block's lower corner region: arms at x 110–120 and 150–160.
    profile: [
      [110, 0],
      [160, 0],
      [160, 50],
      [150, 50],
      [150, 10],
      [120, 10],
      [120, 50],
      [110, 50],
    ],
    from: 10,
    to: 60,
  };
  const solid = (min: P3, max: P3) => bodyOf([itemSolid({ name: 'part', shape: { kind: 'box', min, max } })]);
  const apart = (shape: Prism, min: P3, max: P3): number =>
    formOf(shape).approach(solid(min, max), still).distance;
  test('is as far as its nearest face', () => {
    expectWithin(apart(channel, [0, 0, 0], [100, 80, 60]), 10, 1e-9);
  });
  test('leaves its hollow free', () => {
    expectWithin(apart(channel, [125, 20, 20], [145, 50, 90]), 5, 1e-9);
    expectWithin(apart(channel, [130, 20, 13], [140, 50, 90]), 3, 1e-9);
  });
  test('ends where it ends', () => {
    expectWithin(apart(channel, [110, 63, 4], [160, 90, 60]), 3, 1e-9);
  });
  test('runs the same along x and z, corners in either sense', () => {
    const along = (axis: 'x' | 'z'): Prism => ({
      kind: 'prism',
      along: axis,
      profile: [
        [0, 0],
        [0, 10],
        [10, 0],
      ],
      from: -5,
      to: 5,
    });
    // The slanted face lies on u + v = 10; from (20, 20) it is (40 − 10)/√2 away.
    expectWithin(apart(along('x'), [0, 20, 20], [1, 30, 30]), 30 / Math.SQRT2, 1e-9);
    expectWithin(apart(along('z'), [20, 20, 0], [30, 30, 1]), 30 / Math.SQRT2, 1e-9);
  });
  test('pushed in is as deep as its deepest point', () => {
    expectWithin(
      apart({ ...channel, profile: channel.profile.map(([x, z]) => [x - 14, z]) }, [0, 0, 0], [100, 80, 60]),
      -4,
      2e-6,
    );
  });
});

describe('matched points', () => {
  const rotation = turnsAboutAxes(0.3, -1.1, 2.4);
  const origin: P3 = [300, -40, 12];
  const points: readonly P3[] = [
    [0, 0, 0],
    [400, 10, 0],
    [30, 250, 20],
    [100, 80, 300],
  ];
  const pairs = (n: number) =>
    points.slice(0, n).map((from) => {
      const turned = rotate3(rotation, from);
      return { from, to: [turned[0] + origin[0], turned[1] + origin[1], turned[2] + origin[2]] as P3 };
    });
  test.each([3, 4])('%s give back the turn and the shift', (n) => {
    const fit = rigidFit(pairs(n))!;
    for (const i of [0, 1, 2] as const) {
      expectWithin(fit.origin[i], origin[i], 1e-10);
      for (const k of [0, 1, 2] as const) expectWithin(fit.rotation[i][k], rotation[i][k], 1e-12);
    }
    expectWithin(Math.max(...fit.residuals), 0, 1e-10);
  });
  test('in a line they place nothing', () => {
    expect(
      rigidFit(
        [
          [0, 0, 0],
          [100, 1, 0],
          [300, 0, 0],
        ].map((p) => ({ from: p as unknown as P3, to: p as unknown as P3 })),
      ),
    ).toBeNull();
  });
  test('stretched apart evenly, each is left with the stretch', () => {
    // An equilateral triangle of circumradius 100 against one of 103: every point is left 3 mm short.
    const corner = (r: number, k: number): P3 => [
      r * Math.cos((2 * Math.PI * k) / 3),
      r * Math.sin((2 * Math.PI * k) / 3),
      5,
    ];
    const fit = rigidFit([0, 1, 2].map((k) => ({ from: corner(100, k), to: corner(103, k) })))!;
    for (const r of fit.residuals) expectWithin(r, 3, 1e-10);
  });
});

test('a design names the nearest feature and the point on the scan', () => {
  const design = sampleDesign((d) => {
    d.chassis.axes = 'pan';
    const shape = scanOf([
      [
        [330, -20, -100],
        [330, 20, -100],
        [330, 0, -140],
      ],
    ]);
    d.chassis.obstacles = [{ name: 'bay', shape: shape as never, clear: 5, plusMinus: 2 }];
  });
  const rows = clearances(design, outerSolids(design, floorProfile(design)), []);
  const row = rows.find((r) => r.name === 'bay' && r.kind === 'chassis')!;
  // The step's outside stands at x = 323.
  expectWithin(row.distance!, 7, 1e-9);
  expect(row.between).toEqual(['step', 'bay']);
  expect(row.because).toContain('On the scan, in its own axes: 330.0,');
  expect(row.worst!).toBeLessThan(7 - 2);
});

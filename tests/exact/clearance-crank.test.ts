import { type Clearance, clearances, throwClearances } from 'pan-core/clearance/index.js';
import type { Design, Wing } from 'pan-core/design/index.js';
import { floorProfile, outerSolids, type Plate } from 'pan-core/pan/index.js';
import { describe, expect, test } from 'vitest';
import { expectWithin } from '../numbers.js';
import { type Mutable, stepDesign } from '../sample-design.js';

type P = [number, number, number];

/** One throw at x = 500, 30 wide, radius 48 + 41 about 62 above the rail: its lowest line is at z = −27. */
const rows = (change: (d: Mutable<Design>) => void, plates: readonly Plate[] = []): readonly Clearance[] => {
  const design = stepDesign((d) => {
    d.engine.railHoles = [];
    d.engine.carries = [];
    d.engine.crank!.throws = [500];
    d.chassis.obstacles = [];
    d.chassis.ground = null;
    change(d);
  });
  return clearances(design, outerSolids(design, floorProfile(design)), plates);
};
const one = (list: readonly Clearance[], name: string): Clearance => {
  const found = list.find((c) => c.name === name);
  if (found === undefined)
    throw new Error(`no clearance called ${name}: ${list.map((c) => c.name).join(', ')}`);
  return found;
};

/** A flat lid: underside at z = −down, its thickness above. */
const lid = (down: number, x: readonly [number, number], y: readonly [number, number]): Plate => ({
  baffle: {
    kind: 'lid',
    name: 'lid',
    down,
    rear: x[0],
    front: x[1],
    span: null,
    fixed: 'bolted',
    thickness: 3,
    holes: [],
  },
  index: 0,
  origin: [0, 0, -down],
  u: [1, 0, 0],
  v: [0, 1, 0],
  normal: [0, 0, 1],
  outlines: [
    [
      [x[0], y[0]],
      [x[1], y[0]],
      [x[1], y[1]],
      [x[0], y[1]],
    ],
  ],
  openings: [],
  area: 0,
});

describe('rods to the pan', () => {
  test('a level floor is missed by its depth less the sweep’s', () => {
    const found = one(
      rows(() => {}),
      'rods to pan',
    );
    expectWithin(found.distance!, 23, 1e-9);
    expect(found.allowed).toBe(6);
    expect(found.between).toEqual(['rod of throw 1', 'shallow floor']);
  });

  test('a sloping floor is missed by the distance to its line', () => {
    const found = one(
      rows((d) => {
        d.pan.floor = [
          [700, 30],
          [300, 60],
          [300, 200],
          [0, 200],
        ];
      }),
      'rods to pan',
    );
    // The sweep's front lower edge, x = 515, z = −27, to the line from (700, −30) to (300, −60).
    const [dx, dz] = [400, 30];
    expectWithin(found.distance!, Math.abs(dz * (515 - 700) - dx * (-27 + 30)) / Math.hypot(dx, dz), 1e-9);
  });

  test('the crest of a formed step is missed by the distance to its arc', () => {
    const found = one(
      rows((d) => {
        d.pan.joints.welded = [];
        d.engine.crank!.throws = [281];
      }),
      'rods to pan',
    );
    // Crest: centre (308, −58), radius 8. The sweep ends at x = 296, left of the centre, so its lower edge decides.
    expectWithin(found.distance!, Math.hypot(308 - 296, 58 - 27) - 8, 1e-9);
    expect(found.at![0]).toBeLessThan(308);
  });

  test('a rod that meets the floor is negative by how far it goes in', () => {
    const found = one(
      rows((d) => {
        d.engine.crank!.centreAboveRail = 30;
      }),
      'rods to pan',
    );
    expectWithin(found.distance!, -9, 1e-9);
  });

  test('a narrow pan is missed at the top of its wall', () => {
    const found = one(
      rows((d) => {
        d.pan.left = [
          [0, 68],
          [700, 68],
        ];
      }),
      'rods to pan',
    );
    expectWithin(found.distance!, Math.hypot(68, 62) - 89, 1e-9);
    expect(found.between[1]).toBe('left side');
  });

  test('without throws or crank it is not known', () => {
    for (const change of [
      (d: Mutable<Design>) => {
        d.engine.crank!.throws = null;
      },
      (d: Mutable<Design>) => {
        d.engine.crank = null;
      },
    ])
      expect(one(rows(change), 'rods to pan').distance).toBeNull();
  });
});

describe('rods to baffles and tube', () => {
  test.each<[string, Plate, number]>([
    ['under the sweep', lid(40, [400, 600], [-80, 80]), 10],
    ['beside its end', lid(20, [530, 600], [-20, 20]), 15],
    ['diagonally below its end', lid(42, [519, 600], [-80, 80]), Math.hypot(4, 12)],
    ['off to one side', lid(30, [400, 600], [50, 90]), Math.hypot(50, 62 + 27) - 89],
    ['through it', lid(25, [400, 600], [-80, 80]), -5],
  ])('a lid %s', (_, plate, distance) => {
    const found = one(
      rows(() => {}, [plate]),
      'rods to lid',
    );
    expectWithin(found.distance!, distance, 1e-9);
    expect(found.allowed).toBe(3);
  });

  test('the tube is missed by its outside', () => {
    const found = one(
      rows((d) => {
        d.pickup = { ...d.pickup, bore: 20, wall: 1.5 };
        d.pickup.route = [
          [150, 0, -150],
          [150, 70, -30],
          [650, 70, -30],
        ];
      }),
      'rods to pickup tube',
    );
    expectWithin(found.distance!, Math.hypot(70, 92) - 89 - 11.5, 1e-9);
  });

  test('a tube without a route is not known', () => {
    expect(
      one(
        rows(() => {}),
        'rods to pickup tube',
      ).distance,
    ).toBeNull();
  });
});

describe('what hangs inside', () => {
  const cap = (min: P, max: P) => (d: Mutable<Design>) => {
    d.engine.inside = [{ name: 'main cap', shape: { kind: 'box', min, max } }];
  };
  test.each<[string, P, P, number, string]>([
    ['over the shallow floor', [400, -30, -38], [430, 30, 0], 12, 'shallow floor'],
    ['ahead of the step', [310, -30, -90], [330, 30, -48], -28, 'shallow floor'],
    ['behind the step', [240, -30, -190], [291, 30, -100], 9, 'step'],
    ['beside a wall', [400, 70, -20], [430, 92.5, 0], 7.5, 'left side'],
    ['near the rear wall', [4, -30, -150], [40, 30, -100], 4, 'rear wall'],
    ['near the front wall', [640, -30, -20], [695, 30, -10], 5, 'front wall'],
    ['through the floor', [400, -30, -56], [430, 30, 0], -6, 'shallow floor'],
  ])('a cap %s', (_, min, max, distance, part) => {
    const found = one(rows(cap(min, max)), 'main cap to pan');
    if (distance !== -28) {
      expectWithin(found.distance!, distance, distance < 0 ? 2e-6 : 1e-9);
      expect(found.between[1]).toBe(part);
    } else expect(found.distance!).toBeLessThan(-9.9);
  });

  test('a cap to a lid and to the tube', () => {
    const list = rows(
      (d) => {
        cap([400, -30, -38], [430, 30, 0])(d);
        d.pickup.route = [
          [150, 60, -20],
          [650, 60, -20],
        ];
      },
      [lid(60, [350, 500], [-80, 80])],
    );
    expectWithin(one(list, 'main cap to baffles').distance!, 19, 1e-9);
    expectWithin(one(list, 'main cap to pickup tube').distance!, 30 - 11 - 1.5, 1e-9);
  });
});

describe('flange bolts', () => {
  const wing: Wing = {
    name: 'left wing',
    side: 'left',
    rear: 40,
    front: 200,
    topDown: { rear: 90, front: 90 },
    topFall: 0,
    beyondWall: { rear: 50, front: 50 },
  };
  const bolts = (at: [number, number], change: (d: Mutable<Design>) => void = () => {}): Clearance =>
    one(
      rows((d) => {
        d.engine.railHoles = [{ at, thread: 8 }];
        change(d);
      }),
      'bolt 1',
    );

  test('from the hole’s centre to the wall, against washer, bead and a millimetre', () => {
    const found = bolts([400, 114]);
    expectWithin(found.distance!, 11, 1e-9);
    // ISO 7089, M8: washer 16 mm outside, from memory; 8 + 3 + 1.
    expectWithin(found.allowed, 12, 1e-12);
  });

  test('round the corner of the pan', () => {
    expectWithin(bolts([707, 112]).distance!, Math.hypot(4, 9), 1e-9);
  });

  test('a wing that hangs over the bolt’s way out is told', () => {
    const found = bolts([100, 118], (d) => {
      d.pan.wings = [wing];
    });
    expectWithin(found.distance!, 15, 1e-9);
    expect(found.because).toContain('left wing stands below it');
    expect(
      bolts([400, 118], (d) => {
        d.pan.wings = [wing];
      }).because,
    ).not.toContain('left wing');
  });
});

describe('every throw by itself', () => {
  const design = stepDesign((d) => {
    d.engine.crank!.throws = [150, 500];
    d.pickup.route = [
      [150, 0, -150],
      [600, 0, -150],
    ];
  });
  const throws = throwClearances(design, floorProfile(design), [lid(60, [120, 250], [-80, 80])]);
  const near = (i: number, to: string) => throws[i]?.near.find((one) => one.to === to);

  test('counts from the rear', () => {
    expect(throws.map(({ number, x }) => [number, x])).toEqual([
      [1, 150],
      [2, 500],
    ]);
  });
  test('floor and walls', () => {
    // Over the sump the rear wall is nearest, level with the sweep's rear end at x = 135; ahead the shallow's floor.
    expectWithin(near(0, 'floor')?.distance, 135, 1e-9);
    expectWithin(near(1, 'floor')?.distance, 23, 1e-9);
    // The walls' top edges, y = ±100 at the rail, from the axis 62 above it.
    for (const i of [0, 1]) expectWithin(near(i, 'walls')?.distance, Math.hypot(100, 62) - 89, 1e-9);
  });
  test('baffle and tube', () => {
    // The lid's upper face is at −57, the sweep's lowest line at −27.
    expectWithin(near(0, 'lid')?.distance, 30, 1e-9);
    const { bore, wall } = design.pickup;
    for (const i of [0, 1]) expectWithin(near(i, 'pickup tube')?.distance, 123 - bore / 2 - wall, 1e-9);
  });
});

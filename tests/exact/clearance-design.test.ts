import { type Clearance, clearances } from 'pan-core/clearance/index.js';
import type { Design, Obstacle } from 'pan-core/design/index.js';
import { floorProfile, outerSolids } from 'pan-core/pan/index.js';
import { describe, expect, test } from 'vitest';
import { expectWithin } from '../numbers.js';
import { type Mutable, stepDesign } from '../sample-design.js';

type P = [number, number, number];
const DEG = Math.PI / 180;

const still = { rock: 0, up: 0, down: 0, foreAft: 0 };
const box = (name: string, min: P, max: P, plusMinus = 0): Mutable<Obstacle> => ({
  name,
  shape: { kind: 'box', min, max },
  clear: 15,
  plusMinus,
});

/** The L-shaped pan: sump x 0–300 and 200 deep, shallow to x 700 and 50 deep, 200 wide, 3 mm sheet; no bolts. */
const rows = (change: (d: Mutable<Design>) => void): readonly Clearance[] => {
  const design = stepDesign((d) => {
    d.engine.railHoles = [];
    d.engine.carries = [];
    d.engine.topAboveRail = null;
    d.chassis.moves = { ...still };
    d.chassis.ground = null;
    d.chassis.obstacles = [];
    change(d);
  });
  return clearances(design, outerSolids(design, floorProfile(design)), []);
};
const one = (list: readonly Clearance[], name: string): Clearance => {
  const found = list.find((c) => c.name === name);
  if (found === undefined)
    throw new Error(`no clearance called ${name}: ${list.map((c) => c.name).join(', ')}`);
  return found;
};
const single = (min: P, max: P, change: (d: Mutable<Design>) => void = () => {}): Clearance =>
  one(
    rows((d) => {
      d.chassis.obstacles = [box('bar', min, max)];
      change(d);
    }),
    'bar',
  );

describe('sharp corners, engine still', () => {
  test.each<[string, P, P, number, string]>([
    ['ahead of the step', [320, -400, -180], [400, 400, -80], 17, 'step'],
    ['under the sump', [50, -400, -260], [90, 400, -214], 11, 'sump floor'],
    ['under the shallow', [500, -400, -120], [550, 400, -62], 9, 'shallow floor'],
    ['behind', [-90, -20, -190], [-30, 20, -100], 27, 'rear wall'],
    ['ahead', [720, -20, -40], [800, 20, -30], 17, 'front wall'],
    ['on the left', [100, 121, -90], [200, 300, -60], 18, 'left side'],
    ['on the right', [100, -300, -90], [200, -121, -60], 18, 'right side'],
    ['off the foot of the step', [307, -20, -300], [400, 20, -206], 5, 'step'],
    ['beside the flange', [100, 131, -8], [200, 300, -2], 6, 'flange edge'],
    ['in the road of the step', [290, -400, -180], [400, 400, -80], -13, 'step'],
  ])('%s', (_, min, max, distance, feature) => {
    const found = single(min, max);
    expectWithin(found.distance!, distance, distance < 0 ? 2e-6 : 1e-9);
    expect(found.worst).toBe(found.distance);
    expect(found.between).toEqual([feature, 'bar']);
  });

  test('a plane clears the lowest corner', () => {
    const found = one(
      rows((d) => {
        d.chassis.ground = -290;
      }),
      'ground',
    );
    expectWithin(found.distance!, 87, 1e-9);
    expect(found.allowed).toBe(100);
  });

  test('the plug is lower than the floor by what the design says', () => {
    const found = one(
      rows((d) => {
        d.chassis.ground = -290;
        d.drain = { at: [60, 0], thread: { diameter: 18, pitch: 1.5 }, bung: 28, plugBelow: 12 };
      }),
      'ground',
    );
    expectWithin(found.distance!, 75, 1e-9);
    expect(found.between[0]).toBe('drain plug');
  });

  test('the measurement’s plus-or-minus comes off the worst only', () => {
    const list = rows((d) => {
      d.chassis.obstacles = [box('bar', [320, -400, -180], [400, 400, -80], 2.5)];
    });
    expectWithin(one(list, 'bar').distance!, 17, 1e-9);
    expectWithin(one(list, 'bar').worst!, 14.5, 1e-9);
  });
});

describe('formed corners', () => {
  const folded = (d: Mutable<Design>): void => {
    d.pan.joints.welded = [];
    d.pan.sheet.bendRadius = 5;
  };
  test('an outward bend is round with R + T, to the chord', () => {
    // The foot of the step: centre (295, −195), radius 8; a bar's edge on the 45° line from it.
    const [x, z] = [295 + 40, -195 - 40];
    const found = single([x, -20, z - 50], [x + 50, 20, z], folded);
    expectWithin(found.distance!, 40 * Math.SQRT2 - 8 - 0.0025, 0.0025 + 1e-9);
  });
  test('an inward bend is a fillet of R, to the chord', () => {
    // Fillet centre (308, −58), radius 5: a rod on that centre has the fillet all round it.
    const found = one(
      rows((d) => {
        folded(d);
        const shape = {
          kind: 'rod' as const,
          from: [308, -50, -58] as P,
          to: [308, 50, -58] as P,
          diameter: 4,
          travel: [0, 0, 0] as P,
        };
        d.chassis.obstacles = [{ name: 'rod', shape, clear: 1, plusMinus: 0 }];
      }),
      'rod',
    );
    expectWithin(found.distance!, 3 - 0.0025, 0.0025 + 1e-9);
  });
  test('a flat stays where it was', () => {
    expectWithin(single([320, -400, -180], [400, 400, -80], folded).distance!, 17, 1e-9);
  });
});

describe('tilt', () => {
  const ahead = (axes: 'car' | 'pan' | null, noseUp: number, leanLeft = 0): Clearance =>
    single([400, -20, -173], [500, 20, -170], (d) => {
      d.chassis.axes = axes;
      d.engine.tilt = { noseUp: noseUp * DEG, leanLeft: leanLeft * DEG };
    });

  test('three degrees of nose-up carry the sump’s foot forward by 9 mm at a depth of 170', () => {
    const level = ahead('car', 0).distance!;
    const up = ahead('car', 3).distance!;
    expectWithin(level, 97, 1e-9);
    // The step's plane x = 303 in pan axes; the bar's nearest edge is its lower one as the step leans.
    const edge = 400 * Math.cos(3 * DEG) + -173 * Math.sin(3 * DEG);
    expectWithin(up, edge - 303, 1e-9);
    expectWithin(170 * Math.sin(3 * DEG), level - up - (400 - 400 * Math.cos(3 * DEG)), 0.2);
    expect(Math.round(level - up)).toBeGreaterThanOrEqual(9);
  });

  test('measured along the engine, tilt does not matter', () => {
    expectWithin(ahead('pan', 3).distance!, 97, 1e-9);
  });

  test('leaning left swings what hangs below to the right', () => {
    const left = (lean: number): number =>
      single([100, 200, -190], [200, 300, -180], (d) => {
        d.chassis.axes = 'car';
        d.engine.tilt = { noseUp: 0, leanLeft: lean * DEG };
      }).distance!;
    expect(left(4)).toBeGreaterThan(left(0) + 10);
    expect(left(-4)).toBeLessThan(left(0) - 10);
  });

  test('not said is not known, unless the engine stands level', () => {
    const found = ahead(null, 3);
    expect(found.distance).toBeNull();
    expect(found.worst).toBeNull();
    expect(found.because).toContain('chassis.axes');
    expectWithin(ahead(null, 0).distance!, 97, 1e-9);
    const untold = single([400, -20, -173], [500, 20, -170], (d) => {
      d.chassis.axes = 'car';
      d.engine.tilt = null;
    });
    expect(untold.distance).toBeNull();
    expect(untold.because).toContain('engine.tilt');
  });
});

describe('engine movement', () => {
  const moved = (min: P, max: P, moves: Partial<typeof still>, leanless = true): Clearance =>
    single(min, max, (d) => {
      d.chassis.moves = { ...still, ...moves };
      if (!leanless) d.engine.tilt = { noseUp: 3 * DEG, leanLeft: 0 };
    });

  test.each<[string, P, P, Partial<typeof still>, number]>([
    ['forward into a bar ahead', [320, -400, -180], [400, 400, -80], { foreAft: 3 }, 14],
    ['down onto a bar below', [50, -400, -260], [90, 400, -214], { down: 4, up: 9 }, 7],
    ['up does not bring a bar below nearer', [50, -400, -260], [90, 400, -214], { up: 9 }, 11],
    ['both ways off an edge', [306, -20, -300], [400, 20, -213], { foreAft: 3, down: 4 }, 6],
    ['forward through the gap', [320, -400, -180], [400, 400, -80], { foreAft: 30 }, -13],
  ])('%s', (_, min, max, moves, worst) => {
    expectWithin(moved(min, max, moves).worst!, worst, worst < 0 ? 2e-6 : 1e-9);
  });

  test('rocking does not bring the step nearer to a bar across the car', () => {
    expectWithin(moved([320, -400, -180], [400, 400, -80], { rock: 2 * DEG }).worst!, 17, 1e-6);
  });

  test('rocking swings the foot of a side on its arc about the crank', () => {
    // Corner y = 103, z = −203 about (0, 62); the wall is a plane y = 150 that only the corner can reach first.
    const radius = Math.hypot(103, 265);
    const angle = Math.atan2(103, 265) + 2 * DEG;
    const found = moved([50, 150, -400], [90, 300, -150], { rock: 2 * DEG });
    expectWithin(found.worst!, 150 - radius * Math.sin(angle), 1e-6);
    expectWithin(found.distance!, 47, 1e-9);
  });

  test('a plane takes the lowest corner on its arc', () => {
    const found = one(
      rows((d) => {
        d.chassis.ground = -290;
        d.chassis.moves = { rock: 2 * DEG, up: 4, down: 4, foreAft: 3 };
      }),
      'ground',
    );
    const lowest = 62 - Math.hypot(103, 265) * Math.cos(Math.atan2(103, 265) - 2 * DEG);
    expectWithin(found.worst!, lowest - 4 + 290, 1e-9);
  });

  test('up brings what lies above nearer, down what lies below', () => {
    const list = rows((d) => {
      d.chassis.ground = -290;
      d.chassis.moves = { ...still, up: 9, down: 4 };
      d.chassis.obstacles = [
        { name: 'lid', shape: { kind: 'plane', at: [0, 0, 50], normal: [0, 0, -1] }, clear: 5, plusMinus: 0 },
      ];
    });
    expectWithin(one(list, 'lid').distance!, 50, 1e-9);
    expectWithin(one(list, 'lid').worst!, 41, 1e-9);
    expectWithin(one(list, 'ground').worst!, 83, 1e-9);
  });

  test('an arc’s lowest point counts, not only its ends', () => {
    // The sump's corner stands 21° off straight below the crank, so half a right angle's third carries it past.
    const found = one(
      rows((d) => {
        d.chassis.ground = -290;
        d.chassis.moves = { ...still, rock: 30 * DEG };
      }),
      'ground',
    );
    expectWithin(found.worst!, 62 - Math.hypot(103, 265) + 290, 1e-9);
  });

  test('without the crank’s height the worst of a rocking engine is not known', () => {
    const found = single([320, -400, -180], [400, 400, -80], (d) => {
      d.chassis.moves = { ...still, rock: 2 * DEG };
      d.engine.crank = null;
    });
    expectWithin(found.distance!, 17, 1e-9);
    expect(found.worst).toBeNull();
  });
});

describe('notches', () => {
  test('a notch flush with the floor is open below and leaves the sheet on its other faces', () => {
    const found = single([115, -18, -198], [146, 20, -160], (d) => {
      d.pan.notches = [{ kind: 'box', name: 'hollow', min: [100, -30, -200], max: [160, 30, -150] }];
    });
    // Free room: x 103–157, y ± 27, z below −153.
    expectWithin(found.distance!, 7, 1e-9);
    expect(found.between[0]).toBe('hollow');
  });
});

describe('what the engine carries', () => {
  const carried = (
    items: Mutable<Design>['engine']['carries'],
    top: number | null,
    min: P,
    max: P,
  ): Clearance =>
    one(
      rows((d) => {
        d.engine.carries = items;
        d.engine.topAboveRail = top;
        d.chassis.obstacles = [box('bulkhead', min, max)];
      }),
      'engine to bulkhead',
    );

  test('the block, as high as the engine', () => {
    const found = carried([], 600, [-80, -300, 100], [-60, 300, 700]);
    expectWithin(found.distance!, 35, 1e-9);
    expect(found.between[0]).toBe('engine block');
    expectWithin(carried([], 600, [100, -300, 611], [160, 300, 700]).distance!, 11, 1e-9);
  });

  test('a box', () => {
    const intake = {
      name: 'intake',
      shape: { kind: 'box' as const, min: [80, 130, 200] as P, max: [600, 300, 500] as P },
    };
    const found = carried([intake], 600, [100, 308, 300], [160, 400, 400]);
    expectWithin(found.distance!, 8, 1e-9);
    expect(found.between[0]).toBe('intake');
  });

  test('a rod, with its round ends, to within a hundredth of its radius', () => {
    const shape = {
      kind: 'rod' as const,
      from: [100, 200, 300] as P,
      to: [100, 400, 300] as P,
      diameter: 40,
      travel: [0, 0, 0] as P,
    };
    const pipe = { name: 'pipe', shape };
    const side = carried([pipe], null, [130, 150, 200], [160, 390, 400]).distance!;
    expectWithin(side, 10 - 0.1, 0.1 + 1e-9);
    const end = carried([pipe], null, [0, 433, 200], [160, 500, 400]).distance!;
    expectWithin(end, 13, 1e-9);
  });
});

import type { Clearance } from 'pan-core/clearance/index.js';
import { describe, expect, test } from 'vitest';
import { DEG, one, type P, rows, single, still } from '../clearance-trial.js';
import { expectWithin } from '../numbers.js';

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

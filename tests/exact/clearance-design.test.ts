import type { Clearance } from 'pan-core/clearance/index.js';
import type { Design } from 'pan-core/design/index.js';
import { describe, expect, test } from 'vitest';
import { box, one, type P, rows, single } from '../clearance-trial.js';
import { expectWithin } from '../numbers.js';
import type { Mutable } from '../sample-design.js';

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

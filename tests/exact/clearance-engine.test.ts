import { type Clearance, clearances } from 'pan-core/clearance/index.js';
import type { Design } from 'pan-core/design/index.js';
import { floorProfile, outerSolids } from 'pan-core/pan/index.js';
import { describe, expect, test } from 'vitest';
import { expectWithin } from '../numbers.js';
import { type Mutable, stepDesign } from '../sample-design.js';

/** The L-shaped pan of 3 mm sheet, sump 203 deep outside from x = −3 to 303; engine still, nothing round it. */
const rows = (change: (d: Mutable<Design>) => void): readonly Clearance[] => {
  const design = stepDesign((d) => {
    d.engine.railHoles = [];
    d.engine.carries = [];
    d.engine.topAboveRail = null;
    d.chassis.moves = { rock: 0, up: 0, down: 0, foreAft: 0 };
    d.chassis.obstacles = [];
    d.chassis.ground = null;
    change(d);
  });
  return clearances(design, outerSolids(design, floorProfile(design)), []);
};
const one = (list: readonly Clearance[], name: string): Clearance => {
  const found = list.find((c) => c.name === name);
  if (found === undefined) throw new Error(`no ${name} in ${list.map((c) => c.name).join(', ')}`);
  return found;
};

describe('what moves with the pan', () => {
  test('a flywheel behind the rear wall is as far as it stands behind', () => {
    const found = one(
      rows((d) => {
        d.engine.flywheel = { diameter: 280, rear: -60, front: -35 };
      }),
      'pan to flywheel',
    );
    // The flange reaches to x = −25 between z = −10 and 0, nearer than the wall at −3.
    expectWithin(found.distance, 10, 1e-9);
    expect(found.between[0]).toBe('flange edge');
    expect(found.allowed).toBe(5);
  });

  test('a bell housing over the sump is a round thing about the crank', () => {
    // Radius 150 about z = 62: its foot at z = −88; a bar-like pan corner is met from beside, so look under it.
    const found = one(
      rows((d) => {
        d.engine.rail.outline = [
          [0, -125],
          [690, -125],
          [690, 125],
          [0, 125],
        ];
        d.pan.floor = [
          [700, 50],
          [300, 50],
        ];
        d.engine.bellHousing = { diameter: 300, rear: -200, front: -20 };
      }),
      'pan to bell housing',
    );
    // Its front face is a full disc at x = −20, and the flange's edge at x = 0 is within the disc.
    expectWithin(found.distance, 20, 1e-9);
  });

  test('a round thing is near by its radius, never farther, and at most 0.03 mm nearer', () => {
    const found = one(
      rows((d) => {
        // Under the shallow, whose floor's outside is at z = −53, with its top at z = −153.
        d.engine.crank = {
          centreAboveRail: -253,
          stroke: 96,
          bigEndReach: 41,
          throws: [150],
          throwWidth: 30,
        };
        d.engine.flywheel = { diameter: 200, rear: 450, front: 500 };
      }),
      'pan to flywheel',
    );
    expectWithin(found.distance, 99.985, 0.015 + 1e-9);
  });

  test('a starter that stands in a wing is met by how deep it stands', () => {
    const found = one(
      rows((d) => {
        d.engine.carries = [
          { name: 'starter', shape: { kind: 'box', min: [50, 98, -120], max: [150, 180, -60] } },
        ];
      }),
      'pan to starter',
    );
    // The side's outside is at y = 103.
    expectWithin(found.distance, -5, 2e-6);
    expect(found.between).toEqual(['left side', 'starter']);
  });

  test('without the crank’s height a round thing has no place', () => {
    const found = one(
      rows((d) => {
        d.engine.crank = null;
        d.engine.flywheel = { diameter: 280, rear: -60, front: -35 };
      }),
      'pan to flywheel',
    );
    expect(found.distance).toBeNull();
    expect(found.because).toContain('engine.crank');
  });
});

describe('the road as the car sinks and pitches', () => {
  const sunk = (bumpFront: number, bumpRear: number, droopFront = 0, droopRear = 0) =>
    rows((d) => {
      d.chassis.ground = -350;
      d.chassis.groundPlusMinus = 3;
      d.chassis.suspension = {
        frontAxle: 500,
        rearAxle: -2000,
        bumpFront,
        bumpRear,
        droopFront,
        droopRear,
      };
    });
  test('both axles down: the whole way', () => {
    const found = one(sunk(60, 60), 'ground at full bump');
    expectWithin(found.distance, 350 - 203 - 60, 1e-9);
    expectWithin(found.worst, 350 - 203 - 60 - 3, 1e-9);
    expect(found.allowed).toBe(20);
  });
  test('the level car keeps its own row, less its measurement', () => {
    const found = one(sunk(60, 60), 'ground');
    expectWithin(found.distance, 147, 1e-9);
    expectWithin(found.worst, 144, 1e-9);
  });
  test('the front down further: the road’s line between the axles', () => {
    // At the foot's front edge x = 303 the line has risen by 80 − 40·(197/2500).
    const slope = 40 / 2500;
    const rise = 40 + slope * 2303;
    const found = one(sunk(80, 40), 'ground at full bump');
    expectWithin(found.distance, (350 - 203 - rise) / Math.hypot(1, slope), 1e-9);
  });
  test('ahead of the front axle it is nose down and tail up that counts', () => {
    const list = rows((d) => {
      d.chassis.ground = -350;
      d.chassis.suspension = {
        frontAxle: -500,
        rearAxle: -3000,
        bumpFront: 60,
        bumpRear: 60,
        droopFront: 50,
        droopRear: 90,
      };
    });
    const slope = (60 + 90) / 2500;
    const rise = -90 + slope * 3303;
    expectWithin(one(list, 'ground at full bump').distance, (350 - 203 - rise) / Math.hypot(1, slope), 1e-9);
  });
});

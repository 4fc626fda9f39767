import { type RoomReport, roomReport } from 'pan-core/check/room-report.js';
import { clearances } from 'pan-core/clearance/index.js';
import { leastSpare, roomPairs } from 'pan-core/clearance/room-space.js';
import type { Design, Obstacle } from 'pan-core/design/index.js';
import { floorProfile, outerSolids } from 'pan-core/pan/index.js';
import { describe, expect, test } from 'vitest';
import { diceFrom, seedOr } from '../dice.js';
import { expectWithin } from '../numbers.js';
import { type Mutable, sampleDesign, stepDesign } from '../sample-design.js';

type P = [number, number, number];
const RANGE = { foreAft: [-100, 100], height: [-100, 100] } as const;

const box = (name: string, min: P, max: P): Mutable<Obstacle> => ({
  name,
  shape: { kind: 'box', min, max },
  clear: 15,
  plusMinus: 2,
});

const room = (change: (d: Mutable<Design>) => void, tilts: readonly number[] = []): RoomReport => {
  // Floor's outside 203 under the rail, step's outside at x = 303, block from x = −25 and 600 high.
  const design = stepDesign((d) => {
    d.engine.railHoles = [];
    d.engine.carries = [];
    d.chassis.moves = { rock: 0, up: 0, down: 0, foreAft: 0 };
    d.chassis.ground = -290;
    d.chassis.obstacles = [
      box('crossmember', [342, -400, -180], [420, 400, -80]),
      box('bulkhead', [-120, -600, 150], [-87, 600, 700]),
      {
        name: 'bonnet',
        shape: { kind: 'plane', at: [0, 0, 650], normal: [0, 0, -1] },
        clear: 15,
        plusMinus: 0,
      },
    ];
    change(d);
  });
  const found = roomReport(design, outerSolids(design, floorProfile(design)), RANGE, tilts);
  if (found === null) throw new Error('no room reported');
  return found;
};

describe('room to move of a square pan between square things', () => {
  // By hand: 100 wanted over a road 87 under the floor asks for 13 up; the bonnet leaves 50 − 15 = 35 up;
  // ahead 342 − 303 − 17 = 22; behind 62 − 17 = 45.
  const found = room(() => {});

  test('it does not clear where it is, and says by what', () => {
    expect(found.clear).toBe(false);
    expect(found.here.binds).toBe('ground');
    expectWithin(found.here.spare_mm, -13, 0.05);
  });
  test('the nearest and the lowest place are straight up', () => {
    expectWithin(found.nearest?.forward_mm, 0, 0.5);
    expectWithin(found.nearest?.up_mm, 13, 0.5);
    expectWithin(found.lowest?.up_mm, 13, 0.5);
    expect(found.lowest?.binds).toBe('ground');
  });
  test('the highest is under the bonnet', () => {
    expectWithin(found.highest?.up_mm, 35, 0.5);
    expect(found.highest?.binds).toBe('engine to bonnet');
  });
  test('most room all round is midway, and each side says what binds', () => {
    expectWithin(found.roomiest?.up_mm, 24, 0.5);
    expectWithin(found.roomiest?.spare_mm, 11, 0.5);
    const { forward_mm: x, up_mm: z } = found.roomiest as { forward_mm: number; up_mm: number };
    const by = Object.fromEntries(found.sides.map((side) => [side.toward, side]));
    expectWithin(by.forward?.by_mm, 22 - x, 0.2);
    expectWithin(by.rearward?.by_mm, 45 + x, 0.2);
    expectWithin(by.up?.by_mm, 35 - z, 0.2);
    expectWithin(by.down?.by_mm, z - 13, 0.2);
    expect(['forward', 'rearward', 'up', 'down'].map((toward) => by[toward]?.binds)).toEqual([
      'crossmember',
      'engine to bulkhead',
      'engine to bonnet',
      'ground',
    ]);
  });
  test('each place of the map is clear just where the four limits say', () => {
    const { forward_mm, up_mm, spare_mm } = found.map;
    expect(spare_mm.length * (spare_mm[0]?.length ?? 0)).toBeGreaterThan(400);
    up_mm.forEach((z, j) => {
      forward_mm.forEach((x, i) => {
        const spare = Math.min(22 - x, 45 + x, 35 - z, z - 13);
        // Ahead of the step's upper end the crossmember is met by its corner, farther than straight ahead.
        const clear = spare_mm[j]?.[i] as number;
        if (spare >= 0.1) expect(clear, `${x}, ${z}`).toBeGreaterThanOrEqual(0);
        if (spare <= -0.1 && z < 40) expect(clear, `${x}, ${z}`).toBeLessThan(0);
      });
    });
  });
});

describe('where nothing clears', () => {
  test('bonnet and road too near: either gives the difference', () => {
    // 100 wanted below asks for 13 up; a bonnet at 620 leaves 5.
    const found = room((d) => {
      d.chassis.obstacles[2] = {
        name: 'bonnet',
        shape: { kind: 'plane', at: [0, 0, 620], normal: [0, 0, -1] },
        clear: 15,
        plusMinus: 0,
      };
    });
    expect([found.nearest, found.lowest, found.roomiest]).toEqual([null, null, null]);
    const gives = Object.fromEntries(found.gives.map((give) => [give.obstacle, give]));
    expect(Object.keys(gives).sort()).toEqual(['bonnet', 'ground']);
    expectWithin(gives.ground?.by_mm, 8, 0.6);
    expect(gives.ground?.toward).toBe('down');
    expectWithin(gives.bonnet?.by_mm, 8, 0.6);
    expect(gives.bonnet?.toward).toBe('up');
  });

  test('bulkhead and crossmember too near: the bulkhead goes back, or the crossmember forward or down', () => {
    // Behind −25 + 10 = −15 leaves nothing: 17 asked of 10, and ahead 22: −7 to 22 is clear; 35 mm nearer it is not.
    const found = room((d) => {
      d.chassis.ground = -390;
      d.chassis.obstacles[0] = box('crossmember', [313, -400, -180], [420, 400, -80]);
      d.chassis.obstacles[1] = box('bulkhead', [-120, -600, 150], [-35, 600, 700]);
    });
    // Ahead 10, behind 10, each wanting 17: 14 short between them. Over the crossmember by 123 + 17 − 35 up is no way out.
    expect(found.nearest).toBeNull();
    const bulkhead = found.gives.find(({ obstacle }) => obstacle === 'bulkhead');
    expect(bulkhead?.toward).toBe('rearward');
    expectWithin(bulkhead?.by_mm, 14, 0.6);
    const crossmember = found.gives.find(({ obstacle }) => obstacle === 'crossmember');
    expect(crossmember?.toward).toBe('forward');
    expectWithin(crossmember?.by_mm, 14, 0.6);
  });
});

test('a limit of the user’s own holds for the room as for the clearance', () => {
  const found = room((d) => {
    d.limits = { ground: 80, clear_crossmember: 20 };
  });
  // 87 over the road has 7 to spare, and the shallow over the crossmember 27 − 22; ahead there are 39 − 22.
  expect(found.clear).toBe(true);
  const by = Object.fromEntries(found.sides.map((side) => [side.toward, side.by_mm]));
  expectWithin(by.down, 5, 0.2);
  expectWithin(by.forward, 17, 0.2);
});

describe('at another tilt', () => {
  const DEG = Math.PI / 180;
  const bare = (d: Mutable<Design>): void => {
    d.chassis.obstacles = [];
  };
  test('nose up, the foot’s rear corner goes down: the lowest engine follows it', () => {
    const { tilts } = room(bare, [0, 2 * DEG, 5 * DEG]);
    for (const { nose_up_deg, here, lowest } of tilts) {
      const phi = nose_up_deg * DEG;
      const spare = 290 - 3 * Math.sin(phi) - 203 * Math.cos(phi) - 100;
      expectWithin(here.spare_mm, spare, 1e-9);
      expectWithin(lowest?.up_mm, -spare, 0.5);
    }
    expect(tilts.map(({ nose_up_deg }) => Math.round(nose_up_deg))).toEqual([0, 2, 5]);
  });
  test('the design’s own tilt is where it is, in either axes', () => {
    for (const axes of ['car', 'pan'] as const) {
      const found = room(
        (d) => {
          d.engine.tilt = { noseUp: 3 * DEG, leanLeft: 1 * DEG };
          d.chassis.axes = axes;
        },
        [3 * DEG],
      );
      expectWithin(found.tilts[0]?.here.spare_mm, found.here.spare_mm, 1e-6, axes);
    }
  });
});

test('spare room at a shift is what the clearances of the shifted car say', () => {
  const seed = seedOr(31);
  const dice = diceFrom(seed);
  const usual = sampleDesign();
  const solids = outerSolids(usual, floorProfile(usual));
  const pairs = roomPairs(usual, solids, (row) => row.usual, 100);
  let near = 0;
  // Not so far that parts meet: how deep they do is another question, and a slow one.
  for (let i = 0; i < 25; i++) {
    const [x, z] = [dice.between(-20, 8), dice.between(-12, 12)];
    // The engine forward is the car back.
    const moved = sampleDesign((d) => {
      d.chassis.ground = -283 - z;
      for (const { shape } of d.chassis.obstacles) {
        const points =
          shape.kind === 'box'
            ? [shape.min, shape.max]
            : shape.kind === 'rod'
              ? [shape.from, shape.to]
              : shape.kind === 'plane'
                ? [shape.at]
                : [];
        for (const p of points) {
          p[0] -= x;
          p[2] -= z;
        }
      }
    });
    const rows = clearances(moved, solids, []).filter((row) =>
      ['chassis', 'carried', 'ground'].includes(row.kind),
    );
    const worst = Math.min(...rows.map((row) => (row.worst as number) - row.allowed));
    const { spare } = leastSpare(pairs ?? [], [x, z]);
    if (worst > -10) {
      near++;
      expectWithin(spare, Math.min(worst, 40), 0.06, `seed ${seed}, shift ${x}, ${z}`);
    } else expect(spare, `seed ${seed}, shift ${x}, ${z}`).toBeLessThan(-9.9);
  }
  expect(near).toBeGreaterThan(10);
});

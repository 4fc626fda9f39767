import {
  AT_REST,
  attitudeOf,
  buildPan,
  createOilSystem,
  levelRooms,
  namedRooms,
  openSurfaces,
  rampAnswer,
  roadPlane,
  roomsOfAnswer,
  upOfRise,
} from 'pan-core';
import { areaVector } from 'pan-core/geometry/index.js';
import { dot3 } from 'pan-core/numeric/index.js';
import { describe, expect, it } from 'vitest';
import { expectWithin } from '../numbers.js';
import { sampleDesign, stepDesign } from '../sample-design.js';

const design = sampleDesign();
const system = createOilSystem(buildPan(design));
const rooms = namedRooms(system.model);

describe('oil of rooms under surfaces of their own', () => {
  it('stands where the pools of an answer with the same oil stand', () => {
    const answer = rampAnswer(system, 5.3e6, { forward: -0.5, left: 0.2, grade: 0 }, 'held');
    const found = levelRooms(
      system,
      answer.pools.map(({ cells, volume }) => ({ cells, volume, up: answer.up })),
    );
    roomsOfAnswer(answer).forEach((room, i) => {
      // The level solver is good to about 1e-9 of the height; a nearly dry corner is flat in volume.
      if (room.volume > 1e3) expect(found[i]?.level).toBeCloseTo(room.level, 5);
      expect(found[i]?.hasPickup).toBe(room.hasPickup);
    });
  });

  it('fills no room above its top and leaves a dry one dry', () => {
    const { up } = attitudeOf(design, AT_REST);
    const dry = levelRooms(
      system,
      rooms.map(({ cells }) => ({ cells, volume: -1, up })),
    );
    const full = levelRooms(
      system,
      rooms.map(({ cells }) => ({ cells, volume: 1e12, up })),
    );
    rooms.forEach(({ cells }, i) => {
      const heights = cells.flatMap((c) =>
        (system.model.cells[c]?.faces ?? []).flatMap((face) =>
          face.loop.map((p) => p[0] * up[0] + p[1] * up[1] + p[2] * up[2]),
        ),
      );
      expect(dry[i]?.level).toBeCloseTo(Math.min(...heights), 6);
      expect(full[i]?.level).toBeCloseTo(Math.max(...heights), 6);
    });
  });

  it('turns the rise of a surface into its upward vector: 45 degrees toward the front leans it to the rear', () => {
    const half = Math.SQRT1_2;
    const [x, y, z] = upOfRise(Math.PI / 4, 0);
    expect(x).toBeCloseTo(-half, 12);
    expect(y).toBeCloseTo(0, 12);
    expect(z).toBeCloseTo(half, 12);
  });
});

describe('the road in the pan’s axes', () => {
  const tilted = (noseUp: number) =>
    sampleDesign((d) => {
      d.engine.tilt = { noseUp, leanLeft: 0 };
      d.chassis.axes = 'car';
      d.chassis.ground = -283;
    });
  it('falls away under the nose of an engine that is nose up: 283 at the origin, x tan 3° more at x', () => {
    const road = roadPlane(tilted((3 * Math.PI) / 180));
    const [nx = 0, , nz = 1] = road?.normal ?? [];
    const [ax = 0, , az = 0] = road?.at ?? [];
    const z = (x: number): number => az - (nx * (x - ax)) / nz;
    // Height over the road is measured square to it: 283 mm over the road, 283 / cos 3° along the pan's own z.
    expect(z(0)).toBeCloseTo(-283 / Math.cos((3 * Math.PI) / 180), 9);
    expect(z(600) - z(0)).toBeCloseTo(-600 * Math.tan((3 * Math.PI) / 180), 9);
  });

  it('is not known where nobody said it', () => {
    expect(
      roadPlane(
        sampleDesign((d) => {
          d.chassis.ground = null;
        }),
      ),
    ).toBeNull();
  });
});

it('the tops of the oil are as large as the pan is there, over the cosine of their slope', () => {
  const system = createOilSystem(buildPan(stepDesign()));
  for (const [load, volume] of [
    [{ forward: 0, left: 0, grade: 0 }, 3e6],
    [{ forward: 0, left: 0.2, grade: 0 }, 4e6],
  ] as const) {
    const answer = rampAnswer(system, volume, load, 'held');
    const tops = openSurfaces(system.model, roomsOfAnswer(answer));
    const area = tops.reduce((sum, { loop }) => sum + Math.hypot(...areaVector(loop)), 0);
    // All of the sump, 300 by 200, lies under oil.
    expectWithin(area * answer.up[2], 300 * 200, 1e-6 * 300 * 200, `${load.left} g`);
    for (const { loop } of tops)
      for (const p of loop)
        expectWithin(dot3(answer.up, p), answer.pools[0]?.level ?? Number.NaN, 1e-9, 'level');
  }
});

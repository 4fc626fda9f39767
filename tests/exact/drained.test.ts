import { checkDesign, levelReport } from 'pan-core/check/index.js';
import { createOilSystem, shallowFall, stepOvershoot, undrained } from 'pan-core/oil/index.js';
import { buildPan } from 'pan-core/pan/index.js';
import { describe, expect, it } from 'vitest';
import { expectWithin } from '../numbers.js';
import { stepDesign } from '../sample-design.js';

const deg = Math.PI / 180;
const box = (change: Parameters<typeof stepDesign>[0] = () => {}) =>
  createOilSystem(
    buildPan(
      stepDesign((d) => {
        d.pan.floor = [
          [300, 200],
          [0, 200],
        ];
        d.pan.joints.welded = [0, 1];
        d.drain = { at: [50, 0], thread: { diameter: 20, pitch: 1.5 }, bung: 30, plugBelow: 12 };
        change(d);
      }),
    ),
  );

describe('oil left when drained', () => {
  it('is nothing from a level floor, and no number without a drain', () => {
    expectWithin(undrained(box()) ?? Number.NaN, 0, 1e-6, 'mm³');
    const none = box((d) => {
      d.drain = null;
    });
    expect(undrained(none)).toBeNull();
  });

  it('is the wedge behind the hole’s lowest edge: width · 40²/2 · tan θ', () => {
    const system = box((d) => {
      d.engine.tilt = { noseUp: 3 * deg, leanLeft: 0 };
    });
    expectWithin(undrained(system) ?? 0, (200 * 40 ** 2 * Math.tan(3 * deg)) / 2, 1e-6, 'mm³');
  });

  it('keeps what stands ahead of a wall without a weep: up to its top', () => {
    const system = box((d) => {
      d.baffles = [
        {
          kind: 'wall',
          name: 'wall',
          run: 'across',
          at: 200,
          span: null,
          topDown: 150,
          weep: 0,
          fixed: 'welded',
          thickness: 2,
          doors: [],
          holes: [],
        },
      ];
    });
    // 100 mm from the wall to the end, 50 mm up to its top, 200 mm wide; the plate's own 2 × 50 × 200 mm is taken
    // off the whole height of the room ahead of it, 100 × 200 × 200 mm.
    const share = 1 - (2 * 50 * 200) / (100 * 200 * 200);
    expectWithin(undrained(system) ?? 0, share * 100 * 50 * 200, 1e-6, 'mm³');
  });
});

describe('fall of the shallow', () => {
  it('is the floor’s own slope and the tilt together', () => {
    const sloped = (noseUp: number) =>
      createOilSystem(
        buildPan(
          stepDesign((d) => {
            d.engine.tilt = { noseUp, leanLeft: 0 };
            d.pan.floor = [
              [700, 40],
              [300, 50],
              [300, 200],
              [0, 200],
            ];
          }),
        ),
      );
    const own = Math.atan(10 / 400);
    for (const tilt of [0, 3 * deg, -5 * deg]) {
      expectWithin(shallowFall(sloped(tilt)) ?? Number.NaN, own + tilt, 1e-12, 'rad');
    }
  });
});

describe('slosh where levels are shown', () => {
  it('gives the first mode of a box: L 0.3 m, h 0.1 m is 1.4253 Hz, and L 0.2 m across', () => {
    const report = levelReport(box().model.design, box(), 6e6, { forward: 0, left: 0, grade: 0 });
    const [pool] = report.held.pools;
    // f = (1/2π)√(g(π/L) tanh(πh/L)), NASA SP-106, g 9.80665.
    const f = (length: number) =>
      Math.sqrt(((9806.65 * Math.PI) / length) * Math.tanh((Math.PI * 100) / length)) / (2 * Math.PI);
    expectWithin(f(300), 1.4253, 1e-3, 'Hz');
    expectWithin(pool?.period_fore_s ?? 0, 1 / f(300), 1e-9, 's');
    expectWithin(pool?.period_side_s ?? 0, 1 / f(200), 1e-9, 's');
    expect(report.slosh.step_overshoot).toBe(stepOvershoot(0.05));
    // ζ 0.05: 1.854 (from memory).
    expectWithin(report.slosh.step_overshoot, 1.854, 5e-4, 'times');
  });

  it('a load all at once is looked at as if it were as much larger', () => {
    const system = box((d) => {
      d.manoeuvres = [{ name: 'stop', forward: -0.3, left: 0, grade: 0, seconds: 4, via: [] }];
    });
    const { design } = system.model;
    const found = checkDesign({ design, assumed: [], unknown: [] }).checks.find(
      ({ id }) => id === 'swing_stop',
    );
    // 5.3 L over 300 × 200 mm; the plane at slope 1.854 · 0.3 pivots about the middle, the mouth's rim 30 mm ahead
    // of it is the farthest from the oil; 8 mm over the floor.
    const slope = stepOvershoot(0.05) * 0.3;
    const depth = 5.3e6 / (300 * 200);
    const over = (depth - 8 - slope * 30) / Math.hypot(1, slope);
    expectWithin(found?.value ?? 0, over, 1e-6, 'mm');
  });
});

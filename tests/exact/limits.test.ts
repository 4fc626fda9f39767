import {
  buildPan,
  createOilSystem,
  type Design,
  type Lid,
  leastFill,
  limitChanges,
  limitRing,
  limitsReport,
  limitToward,
  loadToward,
  type Manoeuvre,
  rampAnswer,
  towardOf,
  volumeToRail,
} from 'pan-core';
import { describe, expect, test } from 'vitest';
import { expectWithin } from '../numbers.js';
import { type Mutable, stepDesign } from '../sample-design.js';

/** g to which a first baring is found, and L to which a least fill is. */
const CLOSE_G = 2e-6;
const CLOSE_L = 0.011;

const systemOf = (change: (d: Mutable<Design>) => void = () => {}) =>
  createOilSystem(buildPan(stepDesign(change)));

const manoeuvre = (load: Partial<Manoeuvre>): Manoeuvre => ({
  name: 'case',
  forward: 0,
  left: 0,
  grade: 0,
  seconds: 4,
  via: [],
  ...load,
});

describe('the sump with a sharp lip: x 0 to 300, 200 deep, shallow 50 deep, mouth of 60 at x 150', () => {
  const system = systemOf();

  test('braking: full to the lip at x 300, the surface falls rearward to the rim at x 120', () => {
    // −50 − t·(300 − 120) = −200 + 8 gives t = 142/180.
    const limit = limitToward(system, 6e6, 0);
    expectWithin(limit.held, 142 / 180, CLOSE_G, 'held');
    expectWithin(limit.settled, 142 / 180, CLOSE_G, 'settled');
    expect(limit.binding).toBe('full to the lip at x = 300');
  });

  test('turning with 3 L: a wedge of oil against the wall slides off the mouth', () => {
    // Slope t over a wedge of 10 000 mm²: width √(20 000/t) from the wall, and 8 mm deep at the rim 130 away.
    const s = (Math.sqrt(20_000) + Math.sqrt(20_000 - 4 * 130 * 8)) / (2 * 130);
    for (const toward of [90, 270]) {
      const limit = limitToward(system, 3e6, toward);
      expectWithin(limit.settled, s ** 2, CLOSE_G, `${toward} deg`);
      expect(limit.binding).toBe('the oil slides off the mouth without spilling');
    }
  });

  test('accelerating: the wedge against the rear wall, 300 wide', () => {
    // 3 L: 15 000 mm² of wedge; 8 mm deep at the rim at x 180: √(30 000/t)·t − 180·t = 8.
    const s = (Math.sqrt(30_000) + Math.sqrt(30_000 - 4 * 180 * 8)) / (2 * 180);
    expectWithin(limitToward(system, 3e6, 180).held, s ** 2, CLOSE_G, 'held');
  });

  test('bared at rest is 0, past 3 g is null', () => {
    const bare = limitToward(system, 0.4e6, 45);
    expect([bare.held, bare.settled]).toEqual([0, 0]);
    expect(bare.binding).toContain('bared at rest');
    const held = systemOf((d) => {
      d.baffles = [lid];
    });
    expect(limitToward(held, 9e6, 0).settled).toBeNull();
  });

  test('the least fill for 0.5 g of braking', () => {
    // Slope ½ through 8 mm of depth at x 120 meets the floor at x 104: a wedge of 196 × 98 / 2 by 200.
    const least = leastFill(system, manoeuvre({ forward: -0.5 }));
    expectWithin((least.volume ?? Number.NaN) / 1e6, (196 * 98 * 200) / 2 / 1e6, CLOSE_L, 'least fill, L');
    expect(least.binding).toBe('the oil slides off the mouth without spilling');
    expect(least.monotone).toBe(true);
    expect(least.state).toBe('held');
  });

  test('past the lip’s limit it takes oil enough to stand back from the shallow’s front', () => {
    const t = 0.79;
    const least = leastFill(system, manoeuvre({ forward: -t }));
    // One plane through the rim at x 120, 192 down: a wedge in the sump, and over the shallow up to the
    // crankcase's top, 150 above the rail, from x 120 + 342/t on.
    const top = 120 + 342 / t;
    const sump = (t * (300 - 120 + 8 / t) ** 2) / 2;
    const ahead = (t * (top - (120 + 142 / t)) ** 2) / 2 + 200 * (700 - top);
    expectWithin((least.volume ?? Number.NaN) / 1e6, (200 * (sump + ahead)) / 1e6, CLOSE_L, 'least fill, L');
    expect(leastFill(system, manoeuvre({ forward: -1.5 })).volume).toBeNull();
    const under = leastFill(system, manoeuvre({ forward: -0.785 }));
    expect(under.volume ?? Number.NaN).toBeLessThan(4e6);
  });

  test('a grade alone, and the rail’s volume', () => {
    expectWithin(volumeToRail(system), 16e6, 1e-3, 'to the rail');
    const least = leastFill(system, manoeuvre({}));
    // At rest 8 mm over 300 × 200.
    expectWithin((least.volume ?? Number.NaN) / 1e6, 0.48, CLOSE_L, 'L');
    expect(least.state).toBe('rest');
  });
});

const lid: Mutable<Lid> = {
  kind: 'lid',
  name: 'lid',
  down: 60,
  rear: 60,
  front: 300,
  span: null,
  fixed: 'bolted',
  thickness: 0,
  holes: [],
};

describe('directions', () => {
  test('a = (−cos θ, +sin θ)·g and back', () => {
    expect(loadToward(0, 1)).toEqual({ forward: -1, left: 0, grade: 0 });
    expect(loadToward(90, 1)).toEqual({ forward: 0, left: 1, grade: 0 });
    for (const toward of [0, 30, 90, 135, 180, 200, 270, 359])
      expectWithin(towardOf(loadToward(toward, 0.7)), toward, 1e-9, 'direction');
  });
});

describe('what lifts the lowest limit', () => {
  test('is tried, not canned: each change gives the limit that it says', () => {
    const design = stepDesign((d) => {
      d.baffles = [{ ...lid, down: 120, rear: 240 }];
    });
    const system = createOilSystem(buildPan(design));
    const limit = limitToward(system, 5e6, 0);
    const changes = limitChanges(system, 5e6, limit);
    const of = (kind: string) => changes.find((c) => c.kind === kind);
    const longer = of('lid');
    const rear = Number(/at x (\d+)$/.exec(longer?.change ?? '')?.[1]);
    expect(rear).toBeLessThan(240);
    const again = (to: number) =>
      limitToward(
        createOilSystem(buildPan({ ...design, baffles: [{ ...lid, down: 120, rear: to }] })),
        5e6,
        0,
      );
    expect(longer?.limit ?? null).toBe(again(rear).settled ?? again(rear).held);
    // A step less does not do it.
    expect(again(rear + 10).held ?? 0).toBeLessThan((limit.held ?? 0) + 0.1);
  });

  test('a lower mouth by the depth that it gains', () => {
    const system = systemOf((d) => {
      d.pickup.gap = 40;
    });
    const limit = limitToward(system, 6e6, 0);
    expectWithin(limit.held, (150 - 40) / 180, CLOSE_G, 'held');
    const lower = limitChanges(system, 6e6, limit).find((c) => c.kind === 'mouth');
    // 0.1 g more over 180 mm takes 18 mm.
    expect(lower?.change).toBe('the mouth 18 mm lower, 22 mm over the floor');
    expectWithin(lower?.limit, (150 - 22) / 180, CLOSE_G, 'limit with it');
  });

  test('more oil at a full lip is no cure and is not offered', () => {
    const system = systemOf();
    const changes = limitChanges(system, 6e6, limitToward(system, 6e6, 0));
    expect(changes.filter((c) => c.lifts).map((c) => c.kind)).toEqual(['lid']);
    expect(changes.find((c) => c.lifts)?.change).toMatch(/^a lid 70 mm down from the step to x \d+$/);
  });

  test('what was tried and does not help is told with the best that it gave', () => {
    const system = systemOf();
    const limit = limitToward(system, 6e6, 0);
    for (const { kind, change, limit: best } of limitChanges(system, 6e6, limit).filter((c) => !c.lifts)) {
      expect(best ?? 9, change).toBeLessThan((limit.held ?? 0) + 0.1);
      const litres = Number(/^([\d.]+) L more oil$/.exec(change)?.[1]);
      if (kind === 'oil')
        expectWithin(
          best ?? Number.NaN,
          limitToward(system, 6e6 + litres * 1e6, 0).held ?? Number.NaN,
          CLOSE_G,
          change,
        );
    }
    expect(limitChanges(system, 6e6, limit).map((c) => c.kind)).toContain('oil');
  });

  test('more oil where the oil slides: the least that lifts it by 0.1 g', () => {
    const system = systemOf((d) => {
      d.engine.crank = null;
    });
    const limit = limitToward(system, 3e6, 90);
    const more = limitChanges(system, 3e6, limit).find((c) => c.kind === 'oil');
    const litres = Number(/^([\d.]+) L more oil$/.exec(more?.change ?? '')?.[1]);
    const at = (extra: number) => limitToward(system, 3e6 + extra * 1e6, 90).settled ?? 3;
    expect(at(litres)).toBeGreaterThanOrEqual((limit.settled ?? 0) + 0.1);
    expect(at(litres - 0.1)).toBeLessThan((limit.settled ?? 0) + 0.1);
  });
});

describe('the report', () => {
  const design = stepDesign((d) => {
    d.manoeuvres = [
      { name: 'stop', forward: -0.7, left: 0, grade: 0, seconds: 3, via: [] },
      { name: 'parked on a hill', forward: 0, left: 0, grade: 0.1, seconds: 3, via: [] },
      { name: 'hard stop', forward: -0.9, left: 0, grade: 0, seconds: 3, via: [] },
    ];
  });
  const system = createOilSystem(buildPan(design));
  const report = limitsReport({ design, assumed: [], unknown: [] }, system, 6e6, limitRing(system, 6e6, 4));

  test('keeps its keys, in their units', () => {
    expect(report.directions.map((d) => d.toward_deg)).toEqual([0, 90, 180, 270]);
    for (const d of report.directions) {
      const both = [d.held_g, d.settled_g].filter((g) => g !== null);
      expect(d.limit_g).toBe(both.length === 0 ? null : Math.min(...both));
    }
    expect(report.in_pan_L).toBe(6);
  });

  test('the worst is the lowest, in a driver’s words', () => {
    expect(report.worst?.toward_deg).toBe(0);
    expect(report.worst?.load).toBe('braking');
    expectWithin(report.worst?.limit_g, 142 / 180, CLOSE_G, 'lowest');
  });

  test('every case against it', () => {
    const [stop, parked, hard] = report.cases;
    expect([stop?.covered, parked?.covered, hard?.covered]).toEqual([true, true, false]);
    expect(parked?.toward_deg).toBeNull();
    expect(parked?.limit_g).toBeNull();
    // What would carry it stands far into the rods.
    expect(hard?.under_rods_mm).toBeLessThan(0);
    const answer = rampAnswer(
      system,
      (stop?.least_fill_L ?? 0) * 1e6,
      manoeuvre({ forward: -0.7 }),
      'settled',
    );
    expect(answer.pickup.covered).toBe(true);
  });
});

import {
  buildPan,
  createOilSystem,
  type Design,
  dipstickAnswer,
  PanError,
  readStick,
  stickPath,
} from 'pan-core';
import { describe, expect, test } from 'vitest';
import { expectWithin } from '../numbers.js';
import { type Mutable, stepDesign } from '../sample-design.js';

/** Sump 300 × 200 mm in plan, floor 200 down: 1 L stands 16.667 mm high, and 9 L reach the shallow's floor. */
const MM_PER_L = 1e6 / (300 * 200);
const tan1 = Math.tan(Math.PI / 180);

const stick = (
  enters: [number, number, number],
  toward: [number, number, number],
  change: (d: Mutable<Design>) => void = () => {},
) =>
  createOilSystem(
    buildPan(
      stepDesign((d) => {
        // 6 L stopped: 100 mm deep.
        d.oil = { ...d.oil, fill: 7e6, filter: 0.5e6, galleries: 0.5e6 };
        d.dipstick = { enters, toward };
        change(d);
      }),
    ),
  );

const codesOf = (act: () => unknown): readonly string[] => {
  try {
    act();
  } catch (error) {
    if (error instanceof PanError) return error.problems.map((p) => p.code);
    throw error;
  }
  return [];
};

describe('an upright stick in a sump that is a plain box', () => {
  const found = dipstickAnswer(stick([50, 0, 20], [50, 0, -100]));

  test('full, add, litre and end are where a ruler puts them', () => {
    expectWithin(found.full.along, 120, 1e-9, 'full');
    expectWithin(found.add.along, 120 + MM_PER_L, 1e-9, 'add');
    expectWithin(found.perLitre, MM_PER_L, 1e-9, 'mm for a litre');
    expectWithin(found.tip, 220 - 8, 1e-9, 'end of the stick');
    expect(found.full.volume).toBe(6e6);
    expect(found.add.volume).toBe(5e6);
  });

  test('every row of the table', () => {
    expect(found.table.length).toBe(27);
    for (const { along, volume } of found.table)
      expectWithin(along, 220 - (volume / 1e6) * MM_PER_L, 1e-9, `${volume / 1e6} L`);
  });

  test('a degree of slope tilts the oil about the middle of the sump', () => {
    // 100 mm behind the middle the surface rises by 100·tan 1° with the nose up; across, the stick is in the middle.
    const rise = 100 * tan1;
    // Nose down, the shallow's floor falls forward and keeps a wedge of 400 × 200 mm that the stick misses.
    const kept = (400 * 400 * tan1 * 200) / 2 / (300 * 200);
    const expected = { 'nose up': rise, 'nose down': -rise - kept, 'left side up': 0, 'right side up': 0 };
    for (const { slope, mark, volume } of found.slopes) {
      expectWithin(mark, expected[slope], 1e-9, slope);
      expectWithin(volume, (expected[slope] / MM_PER_L) * 1e6, 1e-2, `${slope}, volume`);
    }
  });

  test('left of the middle, the left side up reads less', () => {
    const { slopes } = dipstickAnswer(stick([150, 60, 20], [150, 60, -100]));
    const across = new Map(slopes.map((s) => [s.slope, s.mark]));
    expectWithin(across.get('left side up'), -60 * tan1, 1e-9, 'left side up');
    expectWithin(across.get('right side up'), 60 * tan1, 1e-9, 'right side up');
    expectWithin(across.get('nose up'), 0, 1e-9, 'nose up');
  });
});

test('a stick at 60° to the vertical spreads its marks by two', () => {
  // Down 100 for 173.2 forward, from x 20.
  const found = dipstickAnswer(stick([20, 0, 20], [20 + 100 * Math.sqrt(3), 0, -80]));
  expectWithin(found.full.along, 2 * 120, 1e-9, 'full');
  expectWithin(found.perLitre, 2 * MM_PER_L, 1e-9, 'mm for a litre');
});

test('installed tilt: nose up brings the oil to the rear', () => {
  const t = 0.05;
  const tilted = stick([50, 0, 20], [50, 0, -100], (d) => {
    d.engine.tilt = { noseUp: t, leanLeft: 0 };
  });
  expectWithin(dipstickAnswer(tilted).full.along, 120 - 100 * Math.tan(t), 1e-9, 'full');
});

test('past 9 L the shallow takes its share of a litre', () => {
  const system = stick([50, 0, 20], [50, 0, -100]);
  const path = stickPath(system.model, { enters: [50, 0, 20], toward: [50, 0, -100] });
  if (path === null) throw new Error('no path');
  expectWithin(readStick(system, path, 9e6)?.along, 70, 1e-9, '9 L');
  expectWithin(readStick(system, path, 10.4e6)?.along, 60, 1e-9, '10.4 L over 700 × 200');
});

describe('what a stick cannot do', () => {
  test('end in the shallow, above the oil', () => {
    const act = () => dipstickAnswer(stick([500, 0, 20], [500, 0, -100]));
    expect(codesOf(act)).toEqual(['shape-dipstick']);
    expect(act).toThrow(/meets the sheet at x 500, y 0, z -50 mm/);
  });
  test('pass beside the pan', () => {
    expect(codesOf(() => dipstickAnswer(stick([900, 0, 20], [900, 0, -100])))).toEqual(['shape-dipstick']);
  });
  test('be missing', () => {
    const none = stick([50, 0, 20], [50, 0, -100], (d) => {
      d.dipstick = null;
    });
    expect(codesOf(() => dipstickAnswer(none))).toEqual(['input-missing']);
  });
  test('leave through the end wall before it reaches the oil', () => {
    const act = () => dipstickAnswer(stick([60, 0, 20], [-60, 0, -100]));
    expect(act).toThrow(/meets the sheet at x 0, y 0, z -40 mm/);
  });
});

describe('a baffle in the way', () => {
  const withLid = (holes: { at: [number, number]; size: number }[]) =>
    dipstickAnswer(
      stick([100, 30, 20], [100, 30, -190], (d) => {
        d.baffles = [
          {
            kind: 'lid',
            name: 'lid',
            down: 70,
            rear: 40,
            front: 200,
            span: null,
            fixed: 'bolted',
            thickness: 3,
            holes,
          },
        ];
      }),
    );
  test('is named with the place to drill', () => {
    const { crossings } = withLid([]);
    expect(crossings.map((c) => c.baffle)).toEqual(['lid']);
    expectWithin(crossings[0]?.along, 90, 1e-9, 'along the stick');
    expectWithin(crossings[0]?.at[2], -70, 1e-9, 'z');
  });
  test('with a hole there it is no more in the way', () => {
    expect(withLid([{ at: [100, 30], size: 14 }]).crossings).toEqual([]);
    expect(withLid([{ at: [140, 30], size: 14 }]).crossings.length).toBe(1);
  });
});

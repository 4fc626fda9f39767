import {
  buildPan,
  checkDesign,
  createOilSystem,
  type Design,
  kinematicViscosity,
  oilProperties,
  suctionAt,
  suctionRise,
  type Tube,
  tubeLoss,
  tubeRun,
  warmEnough,
} from 'pan-core';
import { describe, expect, test } from 'vitest';
import { expectWithin } from '../numbers.js';
import { type Mutable, sampleDesign, stepDesign } from '../sample-design.js';

const straight: Tube = { bore: 22, length: 600, entrance: 'bell', bends: [] };
/** Thick oil: Re well under 2300. */
const thick = { rate: 30_000, viscosity: 5000, density: 890 };

describe('pressure lost in the tube', () => {
  test('laminar: Hagen–Poiseuille, 128·μ·L·Q/π·d⁴', () => {
    const found = tubeLoss(straight, thick);
    // μ = ν·ρ: mm²/s times kg/m³ is 1e-12 N·s/mm².
    const mu = 5000 * 890 * 1e-12;
    const wanted = (128 * mu * 600 * 30_000) / (Math.PI * 22 ** 4);
    expectWithin(found.straight, wanted, 1e-12 * wanted, 'loss along the tube, N/mm²');
    expectWithin(found.friction * found.reynolds, 64, 1e-9, 'f·Re');
  });

  test('laminar: a bend of 90° costs 800/Re and its turbulent share of ½ρV²', () => {
    const bent = tubeLoss(
      { ...straight, bends: [{ angle: Math.PI / 2, radiusOverBore: 2 }] },
      { ...thick, density: 1000 },
    );
    const q = (1000 * bent.speed ** 2 * 1e-12) / 2;
    const rough = (2 * Math.log10((3.7 * 22) / 0.0015)) ** -2;
    expectWithin(bent.bends, q * (12 * rough + 800 / bent.reynolds), 1e-15, 'bend, N/mm²');
    const half = tubeLoss({ ...straight, bends: [{ angle: Math.PI / 4, radiusOverBore: 2 }] }, thick);
    const whole = tubeLoss({ ...straight, bends: [{ angle: Math.PI / 2, radiusOverBore: 2 }] }, thick);
    expectWithin(half.bends, whole.bends / 2, 1e-15, '45°');
  });

  test('turbulent: twice the flow costs between three and four times as much', () => {
    const thin = { viscosity: 8, density: 820 };
    const one = tubeLoss(straight, { ...thin, rate: 750_000 });
    const two = tubeLoss(straight, { ...thin, rate: 1_500_000 });
    expect(one.reynolds).toBeGreaterThan(4000);
    expect(two.straight / one.straight).toBeGreaterThan(3);
    expect(two.straight / one.straight).toBeLessThan(4);
    expectWithin(two.motion / one.motion, 4, 1e-12, 'motion');
  });
});

describe('the way from mouth to port', () => {
  const design = stepDesign((d) => {
    d.pickup = { ...d.pickup, at: [150, 0], gap: 8, bore: 20, wall: 1.5 };
    d.pickup.route = [
      [150, 0, -92],
      [350, 0, -92],
      [350, 0, 8],
    ];
    d.engine.pumpInlet = [350, 0, 8];
  });
  const system = createOilSystem(buildPan(design));

  test('length and bends follow the route from the mouth on', () => {
    const tube = tubeRun(design.pickup, system.model.mouth.centre, design.engine.pumpInlet);
    // Up 100 from the mouth at 192 down, 200 ahead, 100 up.
    expectWithin(tube?.length, 400, 1e-9, 'length');
    expect(tube?.bends.length).toBe(2);
    for (const bend of tube?.bends ?? []) {
      expectWithin(bend.angle, Math.PI / 2, 1e-12, 'angle');
      expectWithin(bend.radiusOverBore, (1.5 * 23) / 20, 1e-12, 'radius over bore');
    }
    expect(tube?.entrance).toBe('bell');
    expect(tubeRun({ ...design.pickup, mouth: 22 }, [150, 0, -192], null)?.entrance).toBe('projecting');
  });

  test('lift is density times gravity times rise', () => {
    expectWithin(suctionRise(system, -100), 108, 1e-9, 'rise');
    const oil = oilProperties(design.oil);
    const { lift, pull, total, density } = suctionAt(straight, oil, 100, 750_000, 108);
    // 816.14 kg/m³ · 9.80665 m/s² · 0.108 m = 864 Pa.
    expectWithin(density, 816.14, 0.005, 'density');
    expectWithin(lift * 1e6, 816.1359 * 9.80665 * 0.108, 1e-2, 'lift, Pa');
    expectWithin(pull, total + lift, 1e-18, 'pull');
  });

  test('warm enough is where the pull meets the limit', () => {
    const oil = oilProperties(design.oil);
    const celsius = warmEnough(straight, oil, 750_000, 100, 0.04);
    if (celsius === null) throw new Error('never warm enough');
    expectWithin(suctionAt(straight, oil, celsius, 750_000, 100).pull, 0.04, 2e-4, 'pull');
    expect(kinematicViscosity(oil, celsius)).toBeGreaterThan(100);
    expect(warmEnough(straight, oil, 7_500_000, 100, 0.0001)).toBeNull();
  });
});

describe('the supply from cold to hot', () => {
  const read = { design: sampleDesign(), assumed: [], unknown: [] };
  const report = checkDesign(read);
  const { supply, checks } = report;
  const check = (id: string) => checks.find((c) => c.id === id);

  test('rows agree with the checks, and every part adds up to the pull', () => {
    if (supply === null) throw new Error('no supply');
    const cold = supply.rows.find((r) => r.temperature_C === -30);
    const hot = supply.rows.find((r) => r.temperature_C === 100);
    expectWithin(cold?.cranking.pull_bar, check('suction_cold')?.value ?? Number.NaN, 1e-12, 'cold, bar');
    expectWithin(hot?.full_flow.pull_bar, check('suction_hot')?.value ?? Number.NaN, 1e-12, 'hot, bar');
    for (const { cranking, full_flow } of supply.rows)
      for (const p of [cranking, full_flow]) {
        const parts = p.tube_bar + p.bends_bar + p.mouth_bar + p.motion_bar + p.lift_bar;
        expectWithin(parts, p.pull_bar, 1e-12 * p.pull_bar, 'sum of parts, bar');
      }
    expectWithin(cold?.cranking.flow_L_min, 1.8, 1e-12, 'cranking flow');
  });

  test('thinner, lighter and easier to draw the warmer it is', () => {
    const rows = supply?.rows ?? [];
    rows.slice(1).forEach((row, i) => {
      const before = rows[i] as typeof row;
      expect(row.viscosity_mm2_s).toBeLessThan(before.viscosity_mm2_s);
      expect(row.density_kg_m3).toBeLessThan(before.density_kg_m3);
      expect(row.full_flow.pull_bar).toBeLessThan(before.full_flow.pull_bar);
    });
  });

  test('what was taken for the oil is listed', () => {
    expect(report.assumed.map(({ path }) => path.join('.'))).toEqual(['oil.density', 'oil.kv100']);
  });
});

describe('what the check says of the supply', () => {
  const statuses = (change: (d: Mutable<Design>) => void) => {
    const { checks } = checkDesign({ design: sampleDesign(change), assumed: [], unknown: [] });
    return new Map(checks.map((c) => [c.id, c.status]));
  };
  test('the sample is as common practice would have it, the rule for water apart', () => {
    const found = statuses(() => {});
    for (const id of ['mouth_gap', 'mouth_curtain', 'tube_speed', 'suction_cold', 'suction_hot'])
      expect(found.get(id), id).toBe('pass');
    expect(found.get('mouth_depth')).toBe('warn');
  });
  test.each([
    ['mouth_gap', 'gap', 4],
    ['mouth_gap', 'gap', 14],
    ['mouth_curtain', 'mouth', 15],
    ['tube_speed', 'bore', 16],
    ['suction_cold', 'bore', 18],
    ['suction_hot', 'bore', 12],
  ] as const)('%s warns of a %s of %d mm', (id, key, value) => {
    const found = statuses((d) => {
      d.pickup[key] = value;
    });
    expect(found.get(id)).toBe('warn');
  });
  test('without a route the pull is not known, and does not pass', () => {
    const design = sampleDesign((d) => {
      d.pickup.route = [];
    });
    const { checks, supply } = checkDesign({ design, assumed: [], unknown: [] });
    expect(supply).toBeNull();
    for (const id of ['suction_cold', 'suction_hot']) {
      const found = checks.find((c) => c.id === id);
      expect(found?.value, id).toBeNull();
      expect(found?.status, id).not.toBe('pass');
      expect(found?.because, id).toContain('pickup.route');
    }
  });
});

import { clearances, throwClearances } from 'pan-core/clearance/index.js';
import type { Design, Stay } from 'pan-core/design/index.js';
import { PanError } from 'pan-core/errors/index.js';
import { add3, scale3, type Vec3 } from 'pan-core/numeric/index.js';
import { buildPan, outerSolids, panelsOf, pickupStay, platesOf } from 'pan-core/pan/index.js';
import { cutParts } from 'pan-core/sheet/index.js';
import { describe, expect, test } from 'vitest';
import { expectWithin } from '../numbers.js';
import { randomFrom } from '../random.js';
import { sampleDesign } from '../sample-design.js';

const ROUND = 12.5;
const STAY: Stay = { at: [427, 30, 12], size: 8, clip: 6, width: 20, thickness: 3 };

/** A tube of 25 mm with a straight run forward at y 75, rising by `rise` over 300 mm. */
const withStay = (stay: Partial<Stay> = {}, rise = 0): Design =>
  sampleDesign((d) => {
    d.pickup.bore = 22;
    d.pickup.wall = 1.5;
    d.pickup.route = [
      [d.pickup.at[0], 0, -60],
      [300, 75, -40],
      [600, 75, -40 + rise],
    ];
    d.pickup.stay = { ...STAY, ...stay } as NonNullable<typeof d.pickup.stay>;
  });

const stayOf = (design: Design) => {
  const stay = pickupStay(design, buildPan(design).profile);
  if (stay === null) throw new Error('no stay');
  return stay;
};

const partOf = (design: Design) => {
  const model = buildPan(design);
  const part = cutParts(design, model.profile, platesOf(model), panelsOf(model)).find(
    ({ name }) => name === 'pickup stay',
  );
  if (part === undefined) throw new Error('no part');
  return part;
};

const refusal = (design: Design) => {
  try {
    stayOf(design);
  } catch (error) {
    if (error instanceof PanError) return error.problems[0]!;
    throw error;
  }
  throw new Error('not refused');
};

describe('a stay beside a level tube', () => {
  test('its legs by plain subtraction', () => {
    const stay = stayOf(withStay());
    // Foot: 2 d behind the bolt, then to the tube's side. Arm: from the seat to 1.5 d over the tube, and 2 d more.
    expectWithin(stay.foot.length, 2 * 8 + (75 - 30 - ROUND), 1e-9, 'foot');
    expectWithin(stay.arm.hole, 12 + 40 - ROUND - 1.5 * 6, 1e-9, 'hole of the clip');
    expectWithin(stay.arm.length, stay.arm.hole + 2 * 6, 1e-9, 'arm');
    for (const [i, v] of [427, 75, -40].entries()) expectWithin(stay.clip.at[i]!, v, 1e-9, `clip ${i}`);
  });

  test('over the tube and down its far side where the foot is too short', () => {
    const stay = stayOf(withStay({ at: [427, 62, 12] }));
    expectWithin(stay.foot.length, 2 * 8 + (75 - 62) + ROUND + 3, 1e-9, 'foot');
    expect(stay.toward[1]).toBeCloseTo(1, 12);
    // From the other side it runs the other way, and is as long.
    const other = stayOf(withStay({ at: [427, 120, 12] }));
    expect(other.toward[1]).toBeCloseTo(-1, 12);
    expectWithin(other.foot.length, 2 * 8 + (45 - ROUND), 1e-9, 'foot from outside');
  });

  test('flat length and holes: legs less the setback, plus the bend', () => {
    const design = withStay();
    const stay = stayOf(design);
    const part = partOf(design);
    const { bendRadius } = design.pan.sheet;
    const fold = part.folds[0]!;
    const outer = bendRadius + 3;
    const flat = stay.foot.length - outer + (stay.arm.length - outer) + fold.allowance;
    expectWithin(part.flat[0], flat, 1e-9, 'flat length');
    const [first, second] = [part.holes[0]!, part.holes[1]!];
    expectWithin(first.at[0], 16, 1e-9, 'bolt');
    // Folded again: what lies past the bend zone goes down from its lower end.
    const past = second.at[0] - (stay.foot.length - outer) - fold.allowance;
    expectWithin(outer + past, stay.arm.hole, 1e-9, 'clip');
    // ISO 273, medium.
    expect([first.diameter, second.diameter]).toEqual([9, 6.6]);
  });
});

test('beside a sloping tube the clip is square to it and the bolt in line with the foot', () => {
  for (const rise of [-60, 45, 90]) {
    const design = withStay({ at: [460, 30, 60] }, rise);
    const stay = stayOf(design);
    const slope = Math.atan2(rise, 300);
    const bolt = add3(
      stay.seat,
      add3(scale3(stay.toward, stay.foot.length - stay.foot.hole), [0, 0, -stay.arm.hole]),
    );
    const r = [bolt[0] - stay.clip.at[0], bolt[2] - stay.clip.at[2]] as const;
    expectWithin(r[0] * Math.cos(slope) + r[1] * Math.sin(slope), 0, 1e-9, 'square to the tube');
    expectWithin(Math.hypot(...r), ROUND + 9, 1e-9, 'reach');
    // On the tube's line from the second corner of the route to the third.
    expectWithin(stay.clip.at[2], -40 + ((stay.clip.at[0] - 300) * rise) / 300, 1e-9, 'on the tube');
  }
});

test('a stay that cannot be is refused with the reason', () => {
  expect(refusal(withStay({ at: [427, 30, -30] }))).toMatchObject({
    code: 'shape-fold',
    path: ['pickup', 'stay'],
    // 1.5 d over the tube's top is at −18.5; the fold needs half a washer, the sheet and its radius.
    value: -30 - -18.5,
  });
  expect(refusal(withStay({ at: [900, 30, 12] })).message).toMatch(/No level straight of the tube/);
  const lost = withStay();
  expect(refusal({ ...lost, pickup: { ...lost.pickup, route: [] } }).message).toMatch(/no tube to hold/);
});

test('rods to stay: the box’s nearest point by brute force', () => {
  const seed = 7;
  const random = randomFrom(seed);
  for (let round = 0; round < 20; round++) {
    const at: Vec3 = [400 + 60 * random(), 20 + 25 * random(), 5 + 25 * random()];
    const design = withStay({ at, width: 10 + 20 * random() });
    const model = buildPan(design);
    const stay = stayOf(design);
    const told = Math.min(
      ...throwClearances(design, model.profile, platesOf(model)).map(
        ({ near }) => near.find(({ to }) => to === 'pickup stay')!.distance,
      ),
    );
    const crank = design.engine.crank!;
    const steps = 24;
    const far = stay.foot.length - stay.foot.hole;
    const boxes = [
      { u: [-stay.foot.hole, far], down: stay.thickness },
      { u: [far - stay.thickness, far], down: stay.arm.length },
    ];
    let least = Infinity;
    for (const { u, down } of boxes)
      for (let i = 0; i <= steps; i++)
        for (let j = 0; j <= steps; j++)
          for (let k = 0; k <= steps; k++) {
            const [a, w, z] = [
              u[0]! + ((u[1]! - u[0]!) * i) / steps,
              stay.width * (j / steps - 0.5),
              (-down * k) / steps,
            ];
            const p = add3(stay.seat, add3(scale3(stay.toward, a), add3(scale3(stay.along, w), [0, 0, z])));
            for (const x of crank.throws!) {
              const out =
                Math.hypot(p[1], p[2] - crank.centreAboveRail) - crank.stroke / 2 - crank.bigEndReach;
              const beyond = Math.abs(p[0] - x) - crank.throwWidth / 2;
              least = Math.min(
                least,
                out <= 0 && beyond <= 0
                  ? Math.max(out, beyond)
                  : Math.hypot(Math.max(out, 0), Math.max(beyond, 0)),
              );
            }
          }
    // Sampling finds nothing nearer than the truth, and its own step is at most 3 mm.
    expect(least, `seed ${seed}, round ${round}`).toBeGreaterThanOrEqual(told - 1e-6);
    expect(least, `seed ${seed}, round ${round}`).toBeLessThan(told + 3);
  }
});

test('the stay has rows of its own against rods, pan and baffles, and none where none is asked for', () => {
  const names = (design: Design): readonly string[] => {
    const model = buildPan(design);
    return clearances(design, outerSolids(design, model.profile), platesOf(model)).map(({ name }) => name);
  };
  expect(names(withStay())).toEqual(
    expect.arrayContaining(['rods to pickup stay', 'pickup stay to pan', 'pickup stay to baffles']),
  );
  expect(names(sampleDesign()).filter((name) => name.includes('stay'))).toEqual([]);
});

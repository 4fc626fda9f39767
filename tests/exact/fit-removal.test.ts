import { type RemovalReport, removalReport } from 'pan-core/check/removal-report.js';
import { jackRoom } from 'pan-core/clearance/least-raise.js';
import { removalScene } from 'pan-core/clearance/removal-scene.js';
import type { Design, Obstacle } from 'pan-core/design/index.js';
import { hullGap } from 'pan-core/geometry/index.js';
import { buildPan, insideLine, outerSolids, platesOf } from 'pan-core/pan/index.js';
import { describe, expect, test } from 'vitest';
import { expectWithin } from '../numbers.js';
import { type Mutable, stepDesign } from '../sample-design.js';

type P = [number, number, number];
const box = (name: string, min: P, max: P): Mutable<Obstacle> => ({
  name,
  shape: { kind: 'box', min, max },
  clear: 15,
  plusMinus: 2,
});

/** Sump's outside x −3 to 303 and 203 deep, shallow's floor 53 deep ahead of it; engine level, nothing round it. */
const built = (change: (d: Mutable<Design>) => void) => {
  const design = stepDesign((d) => {
    d.engine.carries = [];
    d.engine.railHoles = [];
    d.engine.topAboveRail = null;
    d.chassis.obstacles = [];
    change(d);
  });
  const model = buildPan(design);
  return { design, model, solids: outerSolids(design, model.profile), plates: platesOf(model) };
};

const removal = (change: (d: Mutable<Design>) => void): RemovalReport => {
  const { design, model, solids, plates } = built(change);
  const found = removalReport(design, model, solids, plates, () => undefined);
  if (found === null) throw new Error('nothing reported');
  return found;
};

const crossmember = box('crossmember', [356, -400, -180], [450, 400, -80]);

test('with nothing under it the pan comes straight down, the pickup left on', () => {
  const found = removal(() => {});
  expect(found.straight_binds).toBeNull();
  expect([found.engine_lift_mm, found.pickup, found.tilted_legs]).toEqual([0, 'stays', null]);
  expect(found.legs.length).toBe(1);
});

describe('a crossmember under the shallow', () => {
  const found = removal((d) => {
    d.chassis.obstacles = [crossmember];
  });
  test('stops it after the gap between them', () => {
    expectWithin(found.straight_down_mm, 27, 0.1);
    expect(found.straight_binds).toBe('crossmember');
  });
  test('what keeps it is what hangs in the sump and has to pass over the shallow’s floor', () => {
    // Rods down to 62 − 89 = −27 pass over a floor at −50 with 23 to spare; the mouth stays on or comes along.
    expect(found.engine_lift_mm).not.toBeNull();
    const end = found.legs[found.legs.length - 1];
    // The flange's front edge, x = 725, has to be behind the crossmember's rear face.
    expect(725 + (end?.forward_mm ?? 0)).toBeLessThanOrEqual(356);
  });
});

const withCap = removal((d) => {
  d.chassis.obstacles = [crossmember];
  d.engine.inside = [{ name: 'cap', shape: { kind: 'box', min: [100, -40, -150], max: [200, 40, 0] } }];
});

test('what hangs in the sump asks for a lift: the difference of two depths', () => {
  // Pushed back, a cap down to −150 has to pass over the shallow's floor at −50: 100 down, and the crossmember
  // leaves 27. So the lift is at least 73; the search keeps 2 mm twice, in steps of 12 mm and a lift to 10 mm.
  const found = withCap;
  expect(found.pickup).toBe('comes along');
  expect(found.engine_lift_mm).toBeGreaterThanOrEqual(73);
  expect(found.engine_lift_mm).toBeLessThanOrEqual(73 + 4 + 12 + 10);
});

test('a sump between two beams, its shallow over one of them, does not come out at all', () => {
  const found = removal((d) => {
    d.chassis.obstacles = [crossmember, box('rear beam', [-120, -400, -400], [-40, 400, -60])];
  });
  expect([found.engine_lift_mm, found.pickup]).toEqual([null, null]);
  expect(found.complete).toBe(true);
});

test('studs hold it straight until it is past them', () => {
  // 27 mm of drop are there and 40 needed: a lift of 13 at least, and the 2 mm that are kept.
  const found = removal((d) => {
    d.engine.studs = 40;
    d.chassis.obstacles = [crossmember];
  });
  expect(found.engine_lift_mm).toBeGreaterThanOrEqual(13);
  expect(found.legs[0]?.forward_mm).toBe(0);
  expect(found.legs[0]?.down_mm).toBeGreaterThanOrEqual(40);
});

test('a lid over the whole sump catches a pickup that stays', () => {
  const found = removal((d) => {
    d.baffles = [
      {
        kind: 'lid',
        name: 'lid',
        down: 82,
        rear: 0,
        front: 300,
        span: null,
        fixed: 'bolted',
        thickness: 3,
        holes: [],
      },
    ];
  });
  expect([found.pickup, found.pickup_catches]).toEqual(['comes along', 'lid']);
  expect(found.engine_lift_mm).toBe(0);
});

test('an engine under a beam is lifted only as far as the beam lets it', () => {
  const { design, model, solids, plates } = built((d) => {
    d.engine.topAboveRail = 600;
    d.chassis.obstacles = [crossmember, box('beam', [100, -400, 640], [200, 400, 700])];
  });
  const scene = removalScene(design, solids, insideLine(design, model.profile), plates, model.mouth);
  const level = scene?.jacks.find(({ name }) => name === 'lifted level');
  if (scene == null || level === undefined) throw new Error('no scene');
  const most = jackRoom(scene, level);
  expectWithin(most.by, 40, 0.2);
  expect(most.binds).toBe('engine to beam');
});

test('every place on the way clears the crossmember, the pan moved corner by corner', () => {
  const found = withCap;
  const design = stepDesign((d) => {
    d.engine.railHoles = [];
    d.chassis.obstacles = [crossmember];
  });
  const solids = outerSolids(design, buildPan(design).profile).filter((s) => s.role !== 'bolt');
  const beam = [-180, -80].flatMap((z) => [-400, 400].flatMap((y) => [356, 450].map((x): P => [x, y, z])));
  let from = { forward_mm: 0, down_mm: 0 };
  let least = Number.POSITIVE_INFINITY;
  for (const leg of found.legs) {
    for (let t = 0; t <= 1; t += 1 / 64) {
      const x = from.forward_mm + t * (leg.forward_mm - from.forward_mm);
      const z = (found.engine_lift_mm ?? 0) - from.down_mm - t * (leg.down_mm - from.down_mm);
      for (const solid of solids) {
        const moved = solid.vertices.map((p): P => [p[0] + x, p[1], p[2] + z]);
        least = Math.min(least, hullGap(moved, beam).distance);
      }
    }
    from = leg;
  }
  expect(least).toBeGreaterThan(0);
});

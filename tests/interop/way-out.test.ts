import {
  type RaiseReport,
  type RemovalLeg,
  type RemovalReport,
  removalReport,
} from 'pan-core/check/removal-report.js';
import { AT_REST } from 'pan-core/clearance/engine-jack.js';
import { type RemovalScene, removalScene } from 'pan-core/clearance/removal-scene.js';
import { wayOut } from 'pan-core/clearance/removal-search.js';
import type { Design, Obstacle } from 'pan-core/design/index.js';
import { buildPan, insideLine, outerSolids, platesOf } from 'pan-core/pan/index.js';
import { expect, test } from 'vitest';
import { type Mutable, sampleDesign, stepDesign } from '../sample-design.js';
import { manifoldOf } from './volume-kernels.js';

/*
 * Every way out that is told, walked again in small steps: all corners moved by formulas written here, and the gap to
 * every obstacle by manifold-3d, a kernel that searches pairs of triangles. The searches themselves know nothing of it.
 */

type P = [number, number, number];
/** Pieces that each leg of a way, and each raise, is walked in. */
const STEPS = 32;
/** Gaps beyond this are not asked for, mm. */
const FAR = 8;

const corners = (min: P, max: P): P[] =>
  [min[2], max[2]].flatMap((z) => [min[1], max[1]].flatMap((y) => [min[0], max[0]].map((x): P => [x, y, z])));

const box = (name: string, min: P, max: P): Mutable<Obstacle> => ({
  name,
  shape: { kind: 'box', min, max },
  clear: 15,
  plusMinus: 2,
});

const MOUNTS = {
  left: [345, 200, 40] as P,
  right: [345, -200, 40] as P,
  gearbox: [-650, 0, 80] as P,
};

interface Scene {
  readonly search: RemovalScene;
  readonly report: () => RemovalReport;
  readonly pan: readonly (readonly P[])[];
  readonly engine: readonly (readonly P[])[];
  readonly beams: readonly (readonly P[])[];
  readonly middle: P;
}

const sceneOf = (
  obstacles: readonly [string, P, P][],
  change: (d: Mutable<Design>) => void,
  base: typeof stepDesign = stepDesign,
): Scene => {
  const design = base((d) => {
    d.engine.carries = [];
    d.engine.railHoles = [];
    d.engine.mounts = MOUNTS;
    d.chassis.axes = 'pan';
    d.chassis.obstacles = obstacles.map(([name, min, max]) => box(name, min, max));
    change(d);
  });
  const model = buildPan(design);
  const solids = outerSolids(design, model.profile);
  const plates = platesOf(model);
  // The pickup undone and brought along.
  const search = removalScene(design, solids, insideLine(design, model.profile), plates, null);
  if (search === null) throw new Error('no scene');
  const pan = solids
    .filter((s) => s.role !== 'bolt')
    .map((s) => s.vertices.map((v): P => [v[0], v[1], v[2]]));
  const all = pan.flat();
  const mid = (k: 0 | 1 | 2): number => {
    const values = all.map((p) => p[k]);
    return (Math.min(...values) + Math.max(...values)) / 2;
  };
  const top = design.engine.topAboveRail;
  return {
    search,
    report: () => {
      const found = removalReport(design, model, solids, plates, () => undefined);
      if (found === null) throw new Error('nothing reported');
      return found;
    },
    pan,
    engine: top === null ? [] : [corners([0, -125, 0], [690, 125, top])],
    beams: obstacles.map(([, min, max]) => corners(min, max)),
    middle: [mid(0), 0, mid(2)],
  };
};

/** The angle at which a mounting stands `raised` higher, found by halving and not by the library's formula. */
const angleOf = (under: P, on: P, axis: 0 | 1, raised: number): number => {
  const across = axis === 0 ? 1 : 0;
  const out = Math.abs(under[across] - on[across]);
  const up = under[2] - on[2];
  let [low, high] = [0, 1];
  for (let i = 0; i < 60; i++) {
    const t = (low + high) / 2;
    if (out * Math.sin(t) + up * Math.cos(t) - up < raised) low = t;
    else high = t;
  }
  return low;
};

/** A point of the engine once the jack stands at `raised`: each case written out, x forward, y left, z up. */
const jacked = (jack: RaiseReport['jack'], raised: number, [x, y, z]: P): P => {
  if (jack === 'lifted level') return [x, y, z + raised];
  const { left, right, gearbox } = MOUNTS;
  const middle: P = [345, 0, 40];
  if (jack === 'nose raised' || jack === 'gearbox end raised') {
    const [under, on] = jack === 'nose raised' ? [middle, gearbox] : [gearbox, middle];
    const t = angleOf(under, on, 1, raised) * (jack === 'nose raised' ? 1 : -1);
    const [dx, dz] = [x - on[0], z - on[2]];
    return [on[0] + dx * Math.cos(t) - dz * Math.sin(t), y, on[2] + dx * Math.sin(t) + dz * Math.cos(t)];
  }
  const [under, on] = jack === 'left side raised' ? [left, right] : [right, left];
  const t = angleOf(under, on, 0, raised) * (jack === 'left side raised' ? 1 : -1);
  const [dy, dz] = [y - on[1], z - on[2]];
  return [x, on[1] + dy * Math.cos(t) - dz * Math.sin(t), on[2] + dy * Math.sin(t) + dz * Math.cos(t)];
};

const loosened = (leg: RemovalLeg, [mx, , mz]: P, [x, y, z]: P): P => {
  const t = (leg.nose_up_deg * Math.PI) / 180;
  const [dx, dz] = [x - mx, z - mz];
  return [
    mx + dx * Math.cos(t) - dz * Math.sin(t) + leg.forward_mm,
    y + leg.left_mm,
    mz + dx * Math.sin(t) + dz * Math.cos(t) - leg.down_mm,
  ];
};

const BOLTED: RemovalLeg = { forward_mm: 0, left_mm: 0, down_mm: 0, nose_up_deg: 0 };

const between = (a: RemovalLeg, b: RemovalLeg, t: number): RemovalLeg => ({
  forward_mm: a.forward_mm + t * (b.forward_mm - a.forward_mm),
  left_mm: a.left_mm + t * (b.left_mm - a.left_mm),
  down_mm: a.down_mm + t * (b.down_mm - a.down_mm),
  nose_up_deg: a.nose_up_deg + t * (b.nose_up_deg - a.nose_up_deg),
});

const gapOf = (moved: readonly (readonly P[])[], beams: Scene['beams']): number => {
  let least = FAR;
  for (const beam of beams)
    for (const solid of moved) {
      const apart = ([0, 1, 2] as const).some((k) => {
        const [a, b] = [solid.map((p) => p[k]), beam.map((p) => p[k])];
        return Math.min(...a) - Math.max(...b) > least || Math.min(...b) - Math.max(...a) > least;
      });
      if (apart) continue;
      const [a, b] = [manifoldOf(solid), manifoldOf(beam)];
      least = Math.min(least, a.minGap(b, FAR));
      a.delete();
      b.delete();
    }
  return least;
};

/** The least gap on a way, the engine raised as told. */
const walked = (
  { pan, beams, middle }: Scene,
  legs: readonly RemovalLeg[],
  raise: { readonly jack: RaiseReport['jack']; readonly raised: number },
): number => {
  let [least, from] = [FAR, BOLTED];
  for (const leg of legs) {
    for (let i = 0; i <= STEPS; i++) {
      const place = between(from, leg, i / STEPS);
      const moved = pan.map((s) =>
        s.map((p) => jacked(raise.jack, raise.raised, loosened(place, middle, p))),
      );
      least = Math.min(least, gapOf(moved, beams));
    }
    from = leg;
  }
  return least;
};

const LEVEL = { jack: 'lifted level', raised: 0 } as const;

const CROSSMEMBER: [string, P, P] = ['crossmember', [356, -400, -180], [450, 400, -80]];

const cap = (d: Mutable<Design>): void => {
  d.engine.inside = [{ name: 'cap', shape: { kind: 'box', min: [100, -40, -150], max: [200, 40, 0] } }];
};

test('every raise that frees a pan over a crossmember does, and the engine clears all the way up', () => {
  // A beam over the engine's front, so that raises are stopped.
  const scene = sceneOf([CROSSMEMBER, ['brace', [500, -400, 720], [560, 400, 760]]], cap);
  const { raises } = scene.report();
  const free = raises.filter(({ raised_mm }) => raised_mm !== null);
  expect(free.map(({ jack }) => jack)).toContain('lifted level');
  expect(free.map(({ jack }) => jack)).toContain('nose raised');
  expect(raises.map(({ raised_mm }) => raised_mm ?? 1e9)).toEqual(
    raises.map(({ raised_mm }) => raised_mm ?? 1e9).sort((a, b) => a - b),
  );
  for (const { jack, raised_mm, most_mm, most_binds, legs } of raises) {
    const rigid = [...scene.engine, ...scene.pan];
    const at = (raised: number): number =>
      gapOf(
        rigid.map((s) => s.map((p) => jacked(jack, raised, p))),
        scene.beams,
      );
    for (let i = 0; i <= STEPS; i++) expect(at((most_mm * i) / STEPS), `${jack} going up`).toBeGreaterThan(0);
    // Where it is said to stop it does: within the 0.1 mm that counts as touching and the 0.2 mm of the search.
    if (most_binds !== null) expect(at(most_mm), `${jack} at its stop`).toBeLessThan(0.4);
    if (raised_mm === null) continue;
    expect(raised_mm).toBeLessThanOrEqual(most_mm);
    // 2 mm are kept at every place that was looked at, and half the way to the next can be lost between two.
    expect(walked(scene, legs, { jack, raised: raised_mm }), jack).toBeGreaterThan(0);
  }
});

test('a beam along one side is passed sideways, as far as its edge asks', () => {
  const scene = sceneOf([['rail beam', [-500, 40, -400], [1300, 400, -260]]], () => undefined);
  const found = scene.report();
  expect([found.engine_lift_mm, found.sideways, found.raises]).toEqual([0, true, []]);
  expect(found.straight_binds).toBe('rail beam');
  const end = found.legs[found.legs.length - 1] ?? BOLTED;
  // The flange reaches 125 mm to the left and has to pass a face at 40 mm: 85 mm to the right at least.
  expect(end.left_mm).toBeLessThanOrEqual(-85);
  expect(walked(scene, found.legs, LEVEL)).toBeGreaterThan(0);
});

test('the pan pitched as it comes clears the crossmember all the way', () => {
  const scene = sceneOf([CROSSMEMBER], () => undefined, sampleDesign);
  const { legs } = wayOut(scene.search, AT_REST, 'pitched');
  const told = (legs ?? []).map(({ forward, left, down, pitch }) => ({
    forward_mm: forward,
    left_mm: left,
    down_mm: down,
    nose_up_deg: (pitch * 180) / Math.PI,
  }));
  expect(told.some(({ nose_up_deg }) => Math.abs(nose_up_deg) > 2)).toBe(true);
  expect(walked(scene, told, LEVEL)).toBeGreaterThan(0);
});

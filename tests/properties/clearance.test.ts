import { type Clearance, clearances } from 'pan-core/clearance/index.js';
import { hullOfShape } from 'pan-core/clearance/obstacle-hull.js';
import type { Box, Design, Rod } from 'pan-core/design/index.js';
import {
  boundsGap,
  boundsOf,
  deepestPoint,
  depthBody,
  hullGap,
  type RoundHull,
  rotate3,
  tiltedToLevel,
  turnAboutX,
} from 'pan-core/geometry/index.js';
import { floorProfile, type OuterSolid, outerSolids } from 'pan-core/pan/index.js';
import { describe, expect, test } from 'vitest';
import { diceFrom, seedOr } from '../dice.js';
import { mirrored } from '../mirror-design.js';
import { expectWithin } from '../numbers.js';
import { type Mutable, sampleDesign } from '../sample-design.js';
import { tetrahedronGap } from '../tetrahedron-gap.js';

type P = readonly [number, number, number];

test('the gap between random tetrahedra is the least over all pairs of features', () => {
  const seed = seedOr(71);
  const dice = diceFrom(seed);
  let apart = 0;
  for (let i = 0; i < 2000; i++) {
    const around = (centre: number): P => [
      dice.between(-50, 50) + centre,
      dice.between(-50, 50),
      dice.between(-50, 50),
    ];
    const shift = dice.between(0, 120);
    const four = (centre: number): [P, P, P, P] => [
      around(centre),
      around(centre),
      around(centre),
      around(centre),
    ];
    const [a, b] = [four(0), four(shift)];
    const expected = tetrahedronGap(a, b);
    if (expected === null) continue;
    apart++;
    expectWithin(hullGap(a, b).distance, expected, 1e-9, `seed ${seed}, pair ${i}`);
  }
  expect(apart).toBeGreaterThan(1000);
});

/** Obstacles near every part of the pan; some met only when the engine moves, some met at rest. */
const busy = (): Design =>
  sampleDesign((d) => {
    d.engine.tilt = { noseUp: 0.05, leanLeft: -0.03 };
    d.chassis.obstacles.push(
      obstacle('rack', { kind: 'box', min: [338, -400, -150], max: [420, 60, -75] }),
      obstacle('rail', { kind: 'box', min: [-200, 106, -260], max: [800, 180, -30] }),
      obstacle('pipe', {
        kind: 'rod',
        from: [100, -300, -200],
        to: [420, 80, -96],
        diameter: 40,
        travel: [0, 0, 0],
      }),
      obstacle('link', {
        kind: 'rod',
        from: [20, 0, -240],
        to: [10, 90, -90],
        diameter: 24,
        travel: [8, 5, 0],
      }),
    );
  });
const obstacle = (name: string, shape: Mutable<Box | Rod>) => ({ name, shape, clear: 10, plusMinus: 1 });

const run = (
  design: Design,
): { readonly rows: readonly Clearance[]; readonly solids: readonly OuterSolid[] } => {
  const solids = outerSolids(design, floorProfile(design));
  return { rows: clearances(design, solids, []), solids };
};

/** A distance in one place of the engine, by moving every corner of the pan and not the obstacle. */
const distanceIn = (solids: readonly (readonly P[])[], hull: RoundHull): number => {
  const bounds = boundsOf(hull.points);
  let least = Number.POSITIVE_INFINITY;
  for (const solid of solids) {
    if (boundsGap(boundsOf(solid), bounds) - hull.radius > least) continue;
    least = Math.min(least, hullGap(solid, hull.points).distance - hull.radius);
  }
  return least;
};

const design = busy();
const { rows, solids } = run(design);

describe('engine movement', () => {
  const { tilt, crank } = design.engine;
  const { moves } = design.chassis;
  const level = tiltedToLevel(tilt!.noseUp, tilt!.leanLeft);
  const place = (angle: number, shift: P) =>
    solids.map((s) =>
      s.vertices.map((p): P => {
        const q = rotate3(level, turnAboutX(p, crank!.centreAboveRail, angle));
        return [q[0] + shift[0], q[1] + shift[1], q[2] + shift[2]];
      }),
    );
  const shapes = design.chassis.obstacles.filter((o) => o.shape.kind !== 'plane');

  test('a thousand movements never come nearer than the worst, and come near it', () => {
    const seed = seedOr(2024);
    const dice = diceFrom(seed);
    const least = new Map<string, number>();
    for (let i = 0; i < 1000; i++) {
      // Every other one at a corner of the movement, where the worst mostly lies.
      const end = (low: number, high: number): number =>
        i % 2 === 0 ? dice.between(low, high) : dice.happens(0.5) ? low : high;
      const angle = end(-moves.rock, moves.rock);
      const moved = place(angle, [end(-moves.foreAft, moves.foreAft), 0, end(-moves.down, moves.up)]);
      for (const o of shapes) {
        const distance = distanceIn(moved, hullOfShape(o.shape as Box | Rod)) - o.plusMinus;
        least.set(o.name, Math.min(least.get(o.name) ?? Infinity, distance));
      }
    }
    for (const o of shapes) {
      const row = rows.find((r) => r.name === o.name && r.kind === 'chassis')!;
      const sampled = least.get(o.name)!;
      if (sampled > -o.plusMinus) {
        expect(sampled, `seed ${seed}, ${o.name}`).toBeGreaterThanOrEqual(row.worst! - 1e-9);
        expect(sampled - row.worst!, `seed ${seed}, ${o.name}`).toBeLessThan(0.5);
      } else {
        expect(row.worst!, `seed ${seed}, ${o.name}`).toBeLessThan(-o.plusMinus + 1e-9);
      }
    }
  });

  test('no movement brings an obstacle deeper than the worst', () => {
    const seed = seedOr(5);
    const dice = diceFrom(seed);
    const met = shapes.filter(
      (o) => rows.find((r) => r.name === o.name && r.kind === 'chassis')!.worst! < -o.plusMinus,
    );
    expect(met.length).toBeGreaterThanOrEqual(3);
    for (let i = 0; i < 8; i++) {
      const end = (low: number, high: number): number =>
        dice.happens(0.3) ? dice.between(low, high) : dice.happens(0.5) ? low : high;
      const angle = end(-moves.rock, moves.rock);
      const shift: P = [end(-moves.foreAft, moves.foreAft), 0, end(-moves.down, moves.up)];
      const moved = place(angle, shift);
      const body = depthBody(solids.map((s, k) => ({ ...s, vertices: moved[k]! })));
      for (const o of met) {
        const row = rows.find((r) => r.name === o.name && r.kind === 'chassis')!;
        const { depth } = deepestPoint(body, hullOfShape(o.shape as Box | Rod), 0, 1e-3);
        expect(-depth - o.plusMinus, `seed ${seed}, ${o.name}, ${i}`).toBeGreaterThanOrEqual(
          row.worst! - 1e-3,
        );
      }
    }
  });

  test('the nominal distance is the one with the engine at rest', () => {
    const rest = place(0, [0, 0, 0]);
    for (const o of shapes) {
      const row = rows.find((r) => r.name === o.name && r.kind === 'chassis')!;
      const distance = distanceIn(rest, hullOfShape(o.shape as Box | Rod));
      if (distance > 0) expectWithin(row.distance!, distance, 1e-9, o.name);
      else expect(row.distance!).toBeLessThan(1e-9);
    }
  });
});

test('a mirrored design has mirrored clearances', () => {
  const back = run(mirrored(busy())).rows;
  expect(back.length).toBe(rows.length);
  rows.forEach((row, i) => {
    const other = back[i]!;
    expect(other.name).toBe(row.name);
    expectWithin(other.distance!, row.distance!, row.distance! < 0 ? 1e-5 : 1e-9, `${row.name}, distance`);
    expectWithin(other.worst!, row.worst!, row.worst! < 0 ? 0.02 : 1e-6, `${row.name}, worst`);
  });
});

test('results are frozen and the same every time', () => {
  const [a, b] = [run(sampleDesign()).rows, run(sampleDesign()).rows];
  expect(Object.isFrozen(a) && a.every((row) => Object.isFrozen(row) && Object.isFrozen(row.between))).toBe(
    true,
  );
  expect(b).toEqual(a);
});

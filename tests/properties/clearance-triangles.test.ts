import { clearances } from 'pan-core/clearance/index.js';
import type { Obstacle } from 'pan-core/design/index.js';
import { floorProfile, outerSolids } from 'pan-core/pan/index.js';
import { expect, test } from 'vitest';
import { diceFrom, seedOr } from '../dice.js';
import { expectWithin } from '../numbers.js';
import { randomPan } from '../random-design.js';
import { betweenEdges, toTriangle } from '../tetrahedron-gap.js';

type P = readonly [number, number, number];
type Triangle = readonly [P, P, P];

const edges = ([a, b, c]: Triangle): readonly (readonly [P, P])[] => [
  [a, b],
  [b, c],
  [c, a],
];

interface Skin {
  readonly corners: readonly P[];
  readonly edges: readonly (readonly [P, P])[];
  readonly triangles: readonly Triangle[];
}
const long = ([a, b]: readonly [P, P]): boolean => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]) > 1e-9;
/** A sliver without width has edges, and no inside to be near to. */
const wide = ([a, b, c]: Triangle): boolean => {
  const [u, v] = [b.map((w, k) => w - (a[k] as number)), c.map((w, k) => w - (a[k] as number))];
  const [[ux, uy, uz], [vx, vy, vz]] = [u as unknown as P, v as unknown as P];
  return Math.hypot(uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx) > 1e-6;
};
const skinOf = (triangles: readonly Triangle[]): Skin => ({
  corners: triangles.flat(),
  edges: triangles.flatMap(edges).filter(long),
  triangles: triangles.filter(wide),
});

/** Every corner against every triangle and every edge against every edge; no tree, no bound, no bodies. */
const skinGap = (a: Skin, b: Skin): number => {
  let least = Number.POSITIVE_INFINITY;
  for (const [x, y] of [
    [a, b],
    [b, a],
  ] as const)
    for (const p of x.corners) for (const t of y.triangles) least = Math.min(least, toTriangle(p, t));
  for (const e of a.edges) for (const f of b.edges) least = Math.min(least, betweenEdges(e, f));
  return least;
};

const fan = (loop: readonly P[]): readonly Triangle[] =>
  loop.slice(2).map((c, i): Triangle => [loop[0] as P, loop[i + 1] as P, c]);

const boxTriangles = (min: P, max: P): readonly Triangle[] => {
  const at = (i: number): P => [i & 1 ? max[0] : min[0], i & 2 ? max[1] : min[1], i & 4 ? max[2] : min[2]];
  const faces = [
    [0, 1, 3, 2],
    [4, 5, 7, 6],
    [0, 1, 5, 4],
    [2, 3, 7, 6],
    [0, 2, 6, 4],
    [1, 3, 7, 5],
  ];
  return faces.flatMap((face) => fan(face.map(at)));
};

test('pan to box and rod is the least over every pair of triangles, on random pans', () => {
  const seed = seedOr(415);
  const dice = diceFrom(seed);
  let apart = 0;
  for (let i = 0; i < 8; i++) {
    const { design } = randomPan(seed + i);
    const near = (): P => [dice.between(-60, 700), dice.between(-260, 260), dice.between(-290, -30)];
    const obstacles = Array.from({ length: 4 }, (_, k): Obstacle => {
      const [a, b] = [near(), near()];
      const name = `thing ${k}`;
      return k % 2 === 0
        ? {
            name,
            shape: { kind: 'box', min: a, max: [a[0] + 30, a[1] + 50, a[2] + 25] },
            clear: 10,
            plusMinus: 0,
          }
        : {
            name,
            shape: { kind: 'rod', from: a, to: b, diameter: 20, travel: [0, 0, 0] },
            clear: 10,
            plusMinus: 0,
          };
    });
    const still = {
      ...design,
      engine: { ...design.engine, railHoles: design.engine.railHoles.slice(0, 3), carries: [] },
      chassis: {
        ...design.chassis,
        axes: 'pan' as const,
        moves: { rock: 0, up: 0, down: 0, foreAft: 0 },
        obstacles,
      },
    };
    const solids = outerSolids(still, floorProfile(still));
    const skin = skinOf(
      solids.flatMap((s) => s.faces.flatMap((face) => fan(face.map((k) => s.vertices[k] as P)))),
    );
    const rows = clearances(still, solids, []);
    for (const { name, shape } of obstacles) {
      const row = rows.find((r) => r.name === name);
      const [other, radius]: readonly [Skin, number] =
        shape.kind === 'rod'
          ? [
              { corners: [shape.from, shape.to], edges: [[shape.from, shape.to]], triangles: [] },
              shape.diameter / 2,
            ]
          : shape.kind === 'box'
            ? [skinOf(boxTriangles(shape.min, shape.max)), 0]
            : [skinOf([]), 0];
      if ((row?.distance ?? 0) <= 0) continue;
      apart++;
      expectWithin(row?.distance, skinGap(skin, other) - radius, 1e-6, `seed ${seed}, pan ${i}, ${name}`);
    }
  }
  expect(apart).toBeGreaterThan(8);
});

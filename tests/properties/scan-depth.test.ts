import { bodyOf } from 'pan-core/clearance/body.js';
import { itemSolid } from 'pan-core/clearance/carried.js';
import { formOf, type Motion } from 'pan-core/clearance/obstacle-form.js';
import { hullGap, NO_ROTATION } from 'pan-core/geometry/index.js';
import { floorProfile, outerSolids } from 'pan-core/pan/index.js';
import { expect, test } from 'vitest';
import { type Block, depthIn, type P } from '../block-depth.js';
import { type Dice, diceFrom, seedOr } from '../dice.js';
import { randomPan } from '../random-design.js';
import { boxTriangles, scanOf, type Triangle } from '../scan-of.js';
import { insideOf } from '../skin-gap.js';

const STILL: Motion = {
  toChassis: NO_ROTATION,
  rock: { height: 0, angle: 0 },
  moves: null,
  shift: [0, 0, 0],
};

const blocksOf = (dice: Dice): readonly Block[] =>
  Array.from({ length: 3 }, () => {
    const min: P = [dice.stepped(-60, 20, 10), dice.stepped(-60, 20, 10), dice.stepped(-60, 20, 10)];
    const size = (): number => dice.stepped(30, 80, 10);
    return { min, max: [min[0] + size(), min[1] + size(), min[2] + size()] };
  });

/** A turned box of a car's frame with, if open, a good half of its triangles never seen. */
const scanned = (dice: Dice, open: boolean): readonly Triangle[] => {
  const min: P = [dice.between(-60, 40), dice.between(-60, 40), dice.between(-60, 40)];
  const max: P = [min[0] + dice.between(5, 70), min[1] + dice.between(5, 70), min[2] + dice.between(5, 70)];
  const [c, s] = [Math.cos(0.4), Math.sin(0.4)];
  const turned = boxTriangles(min, max).map((triangle) =>
    triangle.map(([x, y, z]) => [c * x - s * y, s * x + c * y, z].map(Math.fround)),
  ) as unknown as readonly Triangle[];
  return open ? turned.filter((_, i) => i === 0 || dice.happens(0.5)) : turned;
};

interface Place {
  readonly triangle: number;
  readonly u: number;
  readonly v: number;
  readonly angle: number;
  readonly dx: number;
  readonly dz: number;
}

// Depth in a union of boxes from the empty cells of their grid, looked for by chance and then in ever smaller steps.
test('a scan that meets a body, open or closed, at rest or moving, is as deep as the deepest of its points', () => {
  const seed = seedOr(2718);
  const dice = diceFrom(seed);
  const met = { open: 0, closed: 0 };
  for (let i = 0; i < 12; i++) {
    const open = i % 2 === 0;
    const moving = i % 4 > 1;
    const what = `seed ${seed}, case ${i}`;
    const blocks = blocksOf(dice);
    const depth = depthIn(blocks);
    const triangles = scanned(dice, open);
    const rock = { height: 40, angle: moving ? 0.06 : 0 };
    const moves = moving ? { rock: rock.angle, up: 3, down: 5, foreAft: 4 } : null;
    const body = bodyOf(blocks.map((b) => itemSolid({ name: 'box', shape: { kind: 'box', ...b } })));
    const found = formOf(scanOf(triangles)).approach(body, { ...STILL, rock, moves });

    /** Where a point of the scan is as the moved engine sees it. */
    const seen = ({ triangle, u, v, angle, dx, dz }: Place): P => {
      const [a, b, c] = triangles[triangle]!;
      const at = ([0, 1, 2] as const).map((k) => a[k] + u * (b[k] - a[k]) + v * (c[k] - a[k]));
      const [x, y, z] = [at[0]! - dx, at[1]!, at[2]! - dz - rock.height];
      const [cos, sin] = [Math.cos(-angle), Math.sin(-angle)];
      return [x, cos * y - sin * z, sin * y + cos * z + rock.height];
    };
    let best = { depth: 0, place: { triangle: 0, u: 0, v: 0, angle: 0, dx: 0, dz: 0 } };
    const clamp = (value: number, low: number, high: number): number => Math.max(low, Math.min(high, value));
    const look = (p: Place): void => {
      const u = clamp(p.u, 0, 1);
      const v = clamp(p.v, 0, 1 - u);
      const angle = clamp(p.angle, -rock.angle, rock.angle);
      const [dx, dz] =
        moves === null
          ? [0, 0]
          : [clamp(p.dx, -moves.foreAft, moves.foreAft), clamp(p.dz, -moves.down, moves.up)];
      const place = { triangle: p.triangle, u, v, angle, dx, dz };
      const here = depth(seen(place));
      if (here > best.depth) best = { depth: here, place };
    };
    const wide = (by: number): number => dice.between(-by, by);
    for (let k = 0; k < 1000; k++)
      look({
        triangle: Math.floor(dice.between(0, triangles.length)),
        u: dice.between(0, 1),
        v: dice.between(0, 1),
        angle: wide(2 * rock.angle),
        dx: wide(8),
        dz: wide(8),
      });
    for (let step = 0.3; step > 1e-6; step *= 0.8)
      for (let k = 0; k < 40; k++) {
        const { triangle, u, v, angle, dx, dz } = best.place;
        look({
          // The deepest point of an edge may be come to from either of its triangles.
          triangle: dice.happens(0.2) ? Math.floor(dice.between(0, triangles.length)) : triangle,
          u: u + wide(step),
          v: v + wide(step),
          angle: angle + wide(step * rock.angle),
          dx: dx + wide(8 * step),
          dz: dz + wide(8 * step),
        });
      }
    if (best.depth === 0) continue;
    met[open ? 'open' : 'closed']++;
    // Never less deep than a point that was found, and as deep as it says where it says so, on the scan as it moves.
    expect(-found.distance, what).toBeGreaterThanOrEqual(best.depth - 2e-6);
    expect(Math.abs(depth(found.at) + found.distance), what).toBeLessThan(moving ? 0.1 : 1e-3);
    const ends = moves === null ? [0] : [-1, 1];
    const swept = triangles.map((_, triangle) =>
      ends.flatMap((x) =>
        ends.flatMap((z) =>
          [0, 1, 2].map((k) =>
            seen({
              triangle,
              u: k === 1 ? 1 : 0,
              v: k === 2 ? 1 : 0,
              angle: found.angle,
              dx: x * (moves?.foreAft ?? 0),
              dz: z > 0 ? (moves?.up ?? 0) : -(moves?.down ?? 0),
            }),
          ),
        ),
      ),
    );
    const off = Math.min(...swept.map((points) => hullGap([found.at], points).distance));
    expect(off, what).toBeLessThan(moving ? 0.05 : 1e-6);
  }
  expect(Math.min(met.open, met.closed)).toBeGreaterThan(2);
});

// A ball about the deepest point that just fits is in the pan all round; about any other point of the scan a ball that is
// a little larger sticks out. By the pan's solids alone, no surface of their union.
test('a scan in a random pan is as deep as a ball about its deepest point says', () => {
  const seed = seedOr(1618);
  const dice = diceFrom(seed);
  const ways = Array.from({ length: 500 }, (): P => {
    const [z, t] = [dice.between(-1, 1), dice.between(0, 2 * Math.PI)];
    const r = Math.sqrt(1 - z * z);
    return [r * Math.cos(t), r * Math.sin(t), z];
  });
  let met = 0;
  for (let i = 0; i < 6; i++) {
    const what = `seed ${seed}, pan ${i}`;
    const { design, profile } = randomPan(seed + i);
    const solids = outerSolids(design, profile ?? floorProfile(design));
    const inside = solids.map(insideOf);
    const holds = (p: P): boolean => inside.some((one) => one(p));
    const middle: P = [dice.between(100, 500), dice.between(-60, 60), dice.between(-140, -30)];
    const triangles = Array.from({ length: 6 }, (): Triangle => {
      const corner = (): P => middle.map((v) => Math.fround(v + dice.between(-50, 50))) as unknown as P;
      return [corner(), corner(), corner()];
    });
    const { distance, at } = formOf(scanOf(triangles)).approach(bodyOf(solids), STILL);
    const depth = -distance;
    if (depth < 1) continue;
    met++;
    const ball = (p: P, radius: number): boolean =>
      ways.every((w) => holds([p[0] + radius * w[0], p[1] + radius * w[1], p[2] + radius * w[2]]));
    expect(ball(at, depth - 1e-3), what).toBe(true);
    for (let k = 0; k < 400; k++) {
      const [a, b, c] = triangles[k % 6]!;
      const [u, v] = [dice.between(0, 1), dice.between(0, 1)];
      const [s, t] = u + v > 1 ? [1 - u, 1 - v] : [u, v];
      const p = ([0, 1, 2] as const).map((j) => a[j] + s * (b[j] - a[j]) + t * (c[j] - a[j])) as unknown as P;
      expect(ball(p, 1.05 * depth), `${what}, point ${k}`).toBe(false);
    }
  }
  expect(met).toBeGreaterThan(2);
});

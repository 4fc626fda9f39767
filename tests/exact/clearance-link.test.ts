import { type Clearance, clearances } from 'pan-core/clearance/index.js';
import type { Rod } from 'pan-core/design/index.js';
import { hullGap } from 'pan-core/geometry/index.js';
import { floorProfile, outerSolids } from 'pan-core/pan/index.js';
import { describe, expect, test } from 'vitest';
import { diceFrom, seedOr } from '../dice.js';
import { expectWithin } from '../numbers.js';
import { stepDesign } from '../sample-design.js';

type P = [number, number, number];
type Ends = [P, P];

/** The L-shaped pan, step's outside at x = 303 down to −203, and a link that goes from place to place. */
const withLink = (diameter: number, [first, ...rest]: readonly Ends[]) => {
  const [from, to] = first as Ends;
  const shape: Rod = { kind: 'rod', from, to, diameter, travel: [0, 0, 0], positions: rest };
  const design = stepDesign((d) => {
    d.engine.railHoles = [];
    d.engine.carries = [];
    d.engine.topAboveRail = null;
    d.chassis.moves = { rock: 0, up: 0, down: 0, foreAft: 0 };
    d.chassis.ground = null;
    d.chassis.obstacles = [{ name: 'link', shape: shape as never, clear: 20, plusMinus: 1 }];
  });
  const solids = outerSolids(design, floorProfile(design));
  const row = clearances(design, solids, []).find((c) => c.name === 'link') as Clearance;
  return { row, solids };
};

const across = (x: number, z: number): Ends => [
  [x, -80, z],
  [x, 80, z],
];

describe('a steering link at several places', () => {
  test('is as near as the nearest of them', () => {
    const { row } = withLink(24, [across(400, -120), across(340, -150), across(360, -190)]);
    expectWithin(row.distance, 340 - 303 - 12, 1e-9);
    expectWithin(row.worst, 340 - 303 - 12 - 1, 1e-9);
    expect(row.between[0]).toBe('step');
  });
  test('counts what it passes over between them', () => {
    // From ahead of the foot to under it: the straight way from (330, −203) to (303, −240) passes the foot’s edge.
    const { row } = withLink(10, [across(330, -203), across(303, -240)]);
    const [dx, dz] = [-27, -37];
    const off = Math.abs(dx * (-203 - -203) - dz * (303 - 330)) / Math.hypot(dx, dz);
    expectWithin(row.distance, off - 5, 1e-9);
  });
  test('does not shut what lies between two stretches of a bent way', () => {
    // Out to x = 500 and down again: the straight line from first to last would come nearer than the bend does.
    const straight = withLink(10, [across(400, -120), across(340, -260)]).row.distance as number;
    const bent = withLink(10, [across(400, -120), across(500, -160), across(340, -260)]).row
      .distance as number;
    expect(bent).toBeGreaterThan(straight + 1);
  });
  test('no place on its way comes nearer than it says', () => {
    const seed = seedOr(88);
    const dice = diceFrom(seed);
    for (let i = 0; i < 12; i++) {
      const end = (): P => [dice.between(330, 500), dice.between(-120, 120), dice.between(-280, -90)];
      const places: Ends[] = Array.from({ length: 4 }, (): Ends => [end(), end()]);
      const { row, solids } = withLink(16, places);
      let least = Number.POSITIVE_INFINITY;
      for (let k = 1; k < places.length; k++)
        for (let t = 0; t <= 1; t += 0.05) {
          const between = (e: 0 | 1): P => {
            const [a, b] = [places[k - 1]![e], places[k]![e]];
            return [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1]), a[2] + t * (b[2] - a[2])];
          };
          const rod = [between(0), between(1)];
          for (const s of solids) least = Math.min(least, hullGap(s.vertices, rod).distance - 8);
        }
      expect(row.distance, `seed ${seed}, ${i}`).toBeLessThanOrEqual(least + 1e-9);
    }
  });
});

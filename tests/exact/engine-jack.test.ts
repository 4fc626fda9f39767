import { jacksOf, mountsOf, type Stance } from 'pan-core/clearance/engine-jack.js';
import { NO_ROTATION, rotate3, tiltedToLevel } from 'pan-core/geometry/index.js';
import { describe, expect, test } from 'vitest';
import { expectWithin } from '../numbers.js';
import { stepDesign } from '../sample-design.js';

type P = readonly [number, number, number];

const MOUNTS = { left: [340, 190, 40], right: [340, -190, 40], gearbox: [-650, 0, 95] } as const;
const CORNERS: readonly P[] = [-250, 690].flatMap((x) =>
  [-125, 125].flatMap((y) => [-200, 600].map((z): P => [x, y, z])),
);

/** Turned by the rows of a rotation, then moved. */
const stood = ({ turn, shift }: Stance, p: P): P => {
  const at = (k: 0 | 1 | 2): number => turn[k][0] * p[0] + turn[k][1] * p[1] + turn[k][2] * p[2] + shift[k];
  return [at(0), at(1), at(2)];
};

// Car and engine level with one another, and 3° nose up: what rises and what stands still is told in the car's axes.
describe.each([
  ['level', NO_ROTATION],
  ['nose up 3°', tiltedToLevel((3 * Math.PI) / 180, 0)],
] as const)('%s', (_, axes) => {
  const inCar = (p: P): P => rotate3(axes, p);
  const jacks = jacksOf(MOUNTS, axes, CORNERS);
  const middle: P = [340, 0, 40];
  const under: Record<string, readonly [P, P | null]> = {
    'lifted level': [middle, null],
    'nose raised': [middle, MOUNTS.gearbox],
    'gearbox end raised': [MOUNTS.gearbox, middle],
    'left side raised': [MOUNTS.left, MOUNTS.right],
    'right side raised': [MOUNTS.right, MOUNTS.left],
  };

  test.each(jacks)('$name: the mounting rises by what is told, the other one stands still', (jack) => {
    const [raisedAt, still] = under[jack.name] ?? [middle, null];
    for (const raised of [0, 1, 20, jack.most]) {
      const stance = jack.stance(raised);
      expectWithin(stood(stance, inCar(raisedAt))[2] - inCar(raisedAt)[2], raised, 1e-9, `${raised} mm`);
      if (still === null) continue;
      const [x, y, z] = inCar(still);
      const [a, b, c] = stood(stance, inCar(still));
      expectWithin(Math.hypot(a - x, b - y, c - z), 0, 1e-9);
      // The chord of a turn about an axis across the arm is 2·arm·sin(turn / 2); the arm keeps its length.
      const [p, q] = [inCar(raisedAt), stood(stance, inCar(raisedAt))];
      const flat = jack.name.endsWith('side raised') ? [1, 2] : [0, 2];
      const arm = Math.hypot(...flat.map((k) => (p[k] ?? 0) - ([x, y, z][k] ?? 0)));
      const chord = Math.hypot(...[0, 1, 2].map((k) => (p[k] ?? 0) - (q[k] ?? 0)));
      expectWithin(chord, 2 * arm * Math.sin(jack.turned(raised) / 2), 1e-9);
    }
    expect(jack.turned(jack.most)).toBeLessThanOrEqual((12 * Math.PI) / 180 + 1e-12);
  });

  test.each(jacks)('$name: no corner moves by more than the room it is told', (jack) => {
    for (const from of [0, 15, 60])
      for (const room of [0.3, 5, 30]) {
        const to = jack.further(from, room);
        expect(to).toBeGreaterThan(from);
        const moved = CORNERS.map(inCar).map((p) => {
          const [a, b] = [stood(jack.stance(from), p), stood(jack.stance(to), p)];
          return Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);
        });
        expect(Math.max(...moved)).toBeLessThanOrEqual(room + 1e-9);
        // And not less for nothing: the farthest corner goes most of it, the chord of an arc as long as the room.
        expect(Math.max(...moved)).toBeGreaterThan(room * 0.99);
      }
  });
});

test('without mountings in the file they are taken where they commonly are, and that is told', () => {
  const { mounts, given } = mountsOf(stepDesign());
  expect(given).toBe(false);
  expect(mounts.left[1]).toBe(-mounts.right[1]);
  expect(mounts.gearbox[0]).toBeLessThan(0);
  const own = mountsOf(
    stepDesign((d) => {
      d.engine.mounts = { left: [340, 190, 40], right: [340, -190, 40], gearbox: [-650, 0, 95] };
    }),
  );
  expect([own.given, own.mounts]).toEqual([true, MOUNTS]);
});

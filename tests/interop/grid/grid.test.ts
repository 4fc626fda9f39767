import { expect, test } from 'vitest';
import { expectWithin } from '../../numbers.js';
import { row } from '../../published/rows.js';
import { gridOf } from './basins.js';
import { cubesOf } from './cubes.js';
import { type Attitude, upOf } from './gravity.js';
import { type Answer, oilOnGrid, type Task } from './ramp.js';
import type { Passage, Point, Screen, Space } from './space.js';

const level: Attitude = { noseUp: 0, leanLeft: 0, grade: 0, rollPerG: 0, divePerG: 0 };

/** Sump x 0–300, 200 deep; shallow x 300–700, 50 deep; 200 wide. */
const lSump = (top: number, screens: readonly Screen[] = []): Space => ({
  min: [0, -100, -200],
  max: [700, 100, top],
  prismatic: true,
  inside: ([x, y, z]) => x > 0 && x < 700 && Math.abs(y) < 100 && z < top && z > (x < 300 ? -200 : -50),
  share: () => 1,
  screens,
  mouth: [150, 0, -192],
  mouthRoom: [
    [0, -100, -200],
    [300, 100, 0],
  ],
});

const plate = (at: number, passage: (p: Point) => Passage, axis: 0 | 2 = 0): Screen => ({
  axis,
  at,
  thickness: 0,
  passage,
});

const answer = (space: Space, cell: number, task: Task): Answer => {
  const found = oilOnGrid(gridOf(space, cubesOf(space, cell)), task);
  if (found === null) throw new Error('The oil does not suit the space.');
  return found;
};

const run = (space: Space, cell: number, litres: number, forward: number, steps: number): Answer =>
  answer(space, cell, {
    attitude: level,
    path: [{ forward, left: 0 }],
    oil: litres * 1e6,
    steps,
  });

test('the grid finds what a sharp lip and a lid keep', () => {
  const open = run(lSump(160), 5, 6, -1, 48);
  expectWithin(
    open.held.mouth / 1e6,
    row('volume.l-sump.kept').value as number,
    5e-3,
    'litres kept by the lip',
  );
  const lid = plate(-50, ([x]) => (x > 100 && x < 300 ? 'solid' : 'none'), 2);
  const under = run(lSump(350, [lid]), 10, 12, -1, 24);
  expectWithin(
    under.held.mouth / 1e6,
    row('volume.l-sump.kept-under-lid').value as number,
    5e-3,
    'litres under the lid',
  );
});

test('the path matters: what has gone over a lip does not come back by itself', () => {
  const space = lSump(160);
  const task = { attitude: level, oil: 6e6, steps: 40 };
  const there = answer(space, 10, { ...task, path: [{ forward: -0.6, left: 0 }] }).held;
  const thereAndHarder = answer(space, 10, {
    ...task,
    path: [
      { forward: -1, left: 0 },
      { forward: -0.6, left: 0 },
    ],
  }).held;
  // At 0.6 g the plane through the lip, 150 above the floor, meets the floor 150 / 0.6 behind it.
  expectWithin(there.mouth / 1e6, (150 * 250 * 0.5 * 200) / 1e6, 0.02, 'litres at 0.6 g');
  expect(thereAndHarder.mouth).toBeLessThan(2.3e6);
});

/** A tank 400 × 200 × 200 parted at x 200 by a wall 150 high, `foot` at its foot and a door above that. */
const parted = (foot: Passage, door: Passage): Space => ({
  min: [0, -100, -200],
  max: [400, 100, 100],
  prismatic: true,
  inside: ([x, y, z]) => x > 0 && x < 400 && Math.abs(y) < 100 && z > -200 && z < 100,
  share: () => 1,
  screens: [plate(200, ([, , z]) => (z < -190 ? foot : z < -150 ? door : z < -50 ? 'solid' : 'none'))],
  mouth: [100, 0, -195],
  mouthRoom: [
    [0, -100, -200],
    [200, 100, 0],
  ],
});

test('a tight wall keeps its side, a weep or a door the right way lets it go, a door the wrong way does not', () => {
  // 4 L stand 50 deep. At 1 g braking the whole lies in a triangle of 200 at the front, none left of the wall.
  const at = (foot: Passage, door: Passage): Answer => run(parted(foot, door), 10, 4, -1, 24);
  expectWithin(at('weep', 'solid').held.mouth / 1e6, 2, 1e-6, 'held behind a weep');
  expectWithin(at('weep', 'solid').settled.mouth / 1e6, 0, 0.02, 'settled through a weep');
  expectWithin(
    at('solid', 'rearward').settled.mouth / 1e6,
    2,
    1e-6,
    'settled behind a door that lets oil rearward',
  );
  // The door’s lower edge is 10 above the floor: a wedge 10 high stays under 45°.
  expectWithin(
    at('solid', 'forward').settled.mouth / 1e6,
    (10 * 10 * 0.5 * 200) / 1e6,
    0.02,
    'left below the door',
  );
  expectWithin(at('solid', 'hole').held.mouth / 1e6, (10 * 10 * 0.5 * 200) / 1e6, 0.02, 'held below a hole');
});

test('a door passes oil its way and keeps it', () => {
  const forwardThenBack = answer(parted('solid', 'forward'), 10, {
    attitude: level,
    path: [
      { forward: -1, left: 0 },
      { forward: 1, left: 0 },
    ],
    oil: 4e6,
    steps: 24,
  });
  // At 1 g of acceleration the front side keeps the triangle under the wall's top, 150 high; the rest runs over.
  expectWithin(
    forwardThenBack.settled.mouth / 1e6,
    4 - (150 * 150 * 0.5 * 200) / 1e6,
    0.01,
    'what ran over the top',
  );
});

test('oil that cannot drain to the mouth is told apart', () => {
  const hollow: Space = {
    ...lSump(100),
    inside: ([x, y, z]) =>
      x > 0 &&
      x < 700 &&
      Math.abs(y) < 100 &&
      z < 100 &&
      z > (x < 300 ? -200 : x > 400 && x < 600 ? -70 : -50),
  };
  const { rest } = run(hollow, 10, 6, -0.2, 4);
  expectWithin(rest.kept / 1e6, (20 * 200 * 200) / 1e6, 1e-9, 'litres in the hollow');
  expectWithin(rest.mouth / 1e6, 6 - 0.8, 1e-6, 'litres at the mouth');
});

test('up points against effective gravity', () => {
  const deg = Math.PI / 180;
  const at = (attitude: Partial<Attitude>, forward = 0, left = 0): Point =>
    upOf({ ...level, ...attitude }, { forward, left });
  // Oil runs to where up points away from.
  expect(at({}, -0.5)[0]).toBeLessThan(0);
  expect(at({}, 0, 0.5)[1]).toBeGreaterThan(0);
  expect(at({ noseUp: 3 * deg })[0]).toBeGreaterThan(0);
  expect(at({ grade: 3 * deg })[0]).toBeGreaterThan(0);
  expect(at({ leanLeft: 3 * deg })[1]).toBeLessThan(0);
  expectWithin(
    -at({ divePerG: 2 * deg }, -1)[0] / at({ divePerG: 2 * deg }, -1)[2],
    Math.tan(47 * deg),
    1e-12,
    'dive adds',
  );
  expectWithin(
    at({ rollPerG: 3 * deg }, 0, 1)[1] / at({ rollPerG: 3 * deg }, 0, 1)[2],
    Math.tan(48 * deg),
    1e-12,
    'roll adds',
  );
});

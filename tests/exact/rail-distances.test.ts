import { checkDesign, distancePlan, LEAST_REDUNDANCY, PanError, type ReadDesign, readDesign } from 'pan-core';
import { describe, expect, it } from 'vitest';
import { seedOr } from '../dice.js';
import { expectWithin } from '../numbers.js';
import { randomFrom } from '../random.js';

type Point = readonly [number, number];

/** Twenty holes of an invented rail on its page, numbered counter-clockwise as one looks at it. */
const holes: readonly Point[] = [
  ...[15, 108, 204, 297, 393, 486, 580, 672].map((x, i): Point => [x, -114 + (i % 3)]),
  [679, -57],
  [681, 55],
  ...[675, 582, 487, 391, 300, 202, 110, 14].map((x, i): Point => [x, 114 - (i % 2)]),
  [10, 58],
  [12, -55],
];
const rough = holes.map(([x, y]): Point => [Math.round(x / 10) * 10, Math.round(y / 10) * 10]);
const plan = distancePlan({ at: rough, placed: [0, 7], reach: null });

const design = (railHoles: object, rail: object = {}): object => ({
  format: 1,
  title: 'Measured',
  units: 'mm',
  engine: {
    rail: { length: 690, width: 250, seen_from: 'above', ...rail },
    rail_holes: railHoles,
    crankcase_top: 140,
  },
  oil: { fill: '7.2 L' },
  pan: {
    floor_inside: [
      [655, 40],
      [320, 58],
      [320, 165],
      [32, 172],
    ],
    width_inside: 190,
  },
  pickup: { at: [140, 0] },
});

const measured = (noise: (i: number) => number, change: object = {}, rail: object = {}): ReadDesign =>
  readDesign(
    design(
      {
        size: 'M8',
        numbered: 'counter-clockwise',
        placed: [
          [1, ...(holes[0] as Point)],
          [8, ...(holes[7] as Point)],
        ],
        distances: (plan?.pairs ?? []).map(([a, b], i) => {
          const [p, q] = [holes[a] as Point, holes[b] as Point];
          return [a + 1, b + 1, Math.hypot(q[0] - p[0], q[1] - p[1]) + noise(i)];
        }),
        ...change,
      },
      rail,
    ),
  );

const gauss = (next: () => number): number =>
  Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next());

describe('holes from the distances between them', () => {
  it('three for each hole are proposed, each watched by the others', () => {
    expect(plan?.pairs).toHaveLength(60);
    expect(plan?.least).toBeGreaterThanOrEqual(LEAST_REDUNDANCY);
    // Every hole in at least three.
    for (let hole = 0; hole < 20; hole++)
      expect(plan?.pairs.filter((pair) => pair.includes(hole)).length).toBeGreaterThanOrEqual(3);
  });

  it('exact distances give the exact holes, on the page and turned over with the rail', () => {
    const { railHoles } = measured(() => 0).design.engine;
    railHoles.forEach(({ at, thread }, i) => {
      expect(thread).toBe(8);
      expectWithin(at[0], (holes[i] as Point)[0], 1e-6);
      expectWithin(at[1], (holes[i] as Point)[1], 1e-6);
    });
    const below = measured(() => 0, {}, { seen_from: 'below' }).design.engine.railHoles;
    below.forEach(({ at }, i) => {
      expectWithin(at[1], -(holes[i] as Point)[1], 1e-6);
    });
    // Numbered the other way round, the same distances are the mirror image about the line of the placed holes.
    const turned = measured(() => 0, { numbered: 'clockwise' }).design.engine.railHoles;
    const line = (x: number): number => -114 + (x - 15) * (1 / (672 - 15));
    expectWithin((turned[15]?.at[1] ?? 0) - line(202), -(113 - line(202)), 1);
  });

  it('noise of 0.15 mm stays within 1.2 × what the survey says of each hole', () => {
    const next = randomFrom(seedOr(20261));
    let [seen, said] = [0, 0];
    for (let trial = 0; trial < 40; trial++) {
      const read = measured(() => 0.15 * gauss(next));
      const survey = read.rail?.distances;
      read.design.engine.railHoles.forEach(({ at }, i) => {
        const [x, y] = holes[i] as Point;
        seen += (at[0] - x) ** 2 + (at[1] - y) ** 2;
        // The worse direction bounds each of two.
        said += 2 * (survey?.holes[i]?.plusMinus ?? 0) ** 2;
      });
    }
    expect(Math.sqrt(seen / said)).toBeLessThan(1.2);
    expect(Math.sqrt(seen / said)).toBeGreaterThan(0.5);
  }, 20_000);

  it('a slip of 5 mm is named, with its size, and fails the check', () => {
    const next = randomFrom(seedOr(20262));
    const at = 17;
    const read = measured((i) => 0.15 * gauss(next) + (i === at ? 5 : 0));
    const [a, b] = plan?.pairs[at] ?? [0, 0];
    expect(read.rail?.distances?.slips.map((slip) => slip.holes)).toEqual([[a + 1, b + 1]]);
    expectWithin(read.rail?.distances?.slips[0]?.by, 5, 1);
    const row = checkDesign(read).checks.find(({ id }) => id === 'rail_distances');
    expect(row?.status).toBe('fail');
    expect(row?.because).toMatch(new RegExp(`Hole ${a + 1} to ${b + 1} reads [45]\\.\\d mm too long`));
    expect(row?.try).toBe(`Measure ${a + 1} to ${b + 1} again.`);
  });

  it('without a slip the check passes, and placed holes that disagree are told', () => {
    const next = randomFrom(seedOr(20263));
    const noise = (): number => 0.15 * gauss(next);
    const rows = (read: ReadDesign) =>
      Object.fromEntries(checkDesign(read).checks.map(({ id, status }) => [id, status]));
    expect(rows(measured(noise))).toMatchObject({ rail_distances: 'pass', rail_placed: 'pass' });
    const placed = [
      [1, 15, -114],
      [8, 680, -113],
    ];
    expect(rows(measured(noise, { placed }))).toMatchObject({ rail_distances: 'pass', rail_placed: 'warn' });
  });

  it.each([
    [
      {
        distances: [
          [1, 2, 90],
          [2, 3, 90],
          [1, 3, 170],
        ],
      },
      /leave hole/,
    ],
    [{ numbered: undefined }, /numbered is missing/],
    [{ placed: undefined }, /placed is missing/],
    [
      {
        distances: [
          [1, 2, 90],
          [2, 1, 91],
          [1, 3, 170],
        ],
      },
      /measures holes 2 and 1 again/,
    ],
    [{ rough: rough.slice(0, 5) }, /rough has 5 holes, and the distances number 20/],
    [{ rough: [...rough].reverse() }, /other way round/],
  ])('%j is refused in plain words', (change, says) => {
    let text = '';
    try {
      measured(() => 0, change);
    } catch (error) {
      if (!(error instanceof PanError)) throw error;
      text = error.message;
    }
    expect(text).toMatch(says);
  });
});

import { fitHoles, type HoleDatum, type HoleFit, proposeDistances } from 'pan-core/geometry/index.js';
import { normalAbove } from 'pan-core/numeric/index.js';
import { describe, expect, it } from 'vitest';
import { seedOr } from '../dice.js';
import { randomFrom } from '../random.js';

type Point = readonly [number, number];

const SIGMA = 0.15;

/** Twenty holes around an invented rail, counter-clockwise from the rear right, none quite in line. */
const rail: readonly Point[] = [
  ...[15, 108, 204, 297, 393, 486, 580, 672].map((x, i): Point => [x, -114 + (i % 3)]),
  [679, -57],
  [681, 55],
  ...[675, 582, 487, 391, 300, 202, 110, 14].map((x, i): Point => [x, 114 - (i % 2)]),
  [10, 58],
  [12, -55],
];
const datum: HoleDatum = [0, 7];

/** The same in the datum's own axes. */
const inDatum = (points: readonly Point[]): readonly Point[] => {
  const [p, q] = [points[datum[0]] as Point, points[datum[1]] as Point];
  const length = Math.hypot(q[0] - p[0], q[1] - p[1]);
  const [c, s] = [(q[0] - p[0]) / length, (q[1] - p[1]) / length];
  return points.map(([x, y]) => [c * (x - p[0]) + s * (y - p[1]), c * (y - p[1]) - s * (x - p[0])]);
};

const gap = ([a, b]: readonly [number, number]): number => {
  const [p, q] = [rail[a] as Point, rail[b] as Point];
  return Math.hypot(q[0] - p[0], q[1] - p[1]);
};

// The tool knows the holes to a centimetre when it is asked what to measure.
const roughly = rail.map(([x, y]): Point => [Math.round(x / 10) * 10, Math.round(y / 10) * 10]);
const proposal = proposeDistances(roughly, datum, 60);
const pairs = proposal?.pairs ?? [];
const truth = inDatum(rail);

const gauss = (next: () => number): number =>
  Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next());

const fitted = (noise: (i: number) => number, rough: readonly Point[] | null = null): HoleFit => {
  const fit = fitHoles(
    rail.length,
    pairs.map((holes, i) => ({ holes, length: gap(holes) + noise(i) })),
    datum,
    SIGMA,
    1,
    rough,
  );
  if ('kind' in fit) throw new Error(`no fit: ${JSON.stringify(fit)}`);
  return fit;
};

describe('twenty holes from sixty distances', () => {
  it('are proposed so that each distance is checked by the others', () => {
    expect(pairs).toHaveLength(60);
    expect(new Set(pairs.map(String)).size).toBe(60);
    expect(proposal?.least).toBeGreaterThanOrEqual(0.2);
    const fit = fitted(() => 0);
    // On the holes themselves, not only where they were roughly thought to be.
    expect(Math.min(...fit.redundancy)).toBeGreaterThanOrEqual(0.2);
    // Trace of the redundancy matrix: distances less unknowns (Baarda), 60 − (2·20 − 3).
    expect(fit.redundancy.reduce((a, b) => a + b, 0)).toBeCloseTo(23, 9);
  });

  it('come back within 1.2 of their least-squares covariance at ± 0.15 mm', () => {
    const seed = seedOr(20_260);
    const runs = 200;
    const next = randomFrom(seed);
    const squares = truth.map(() => [0, 0] as [number, number]);
    let accused = 0;
    for (let run = 0; run < runs; run++) {
      const { points, slips } = fitted(() => SIGMA * gauss(next), roughly);
      accused += slips.length;
      points.forEach(([x, y], i) => {
        const [tx, ty] = truth[i] as Point;
        const sum = squares[i] as [number, number];
        sum[0] += (x - tx) ** 2 / runs;
        sum[1] += (y - ty) ** 2 / runs;
      });
    }
    const { variance } = fitted(() => 0);
    const ratios = variance.flatMap(([xx, , yy], i) => {
      const [sx, sy] = squares[i] as [number, number];
      return [...(xx === 0 ? [] : [Math.sqrt(sx / xx)]), ...(yy === 0 ? [] : [Math.sqrt(sy / yy)])];
    });
    expect(ratios).toHaveLength(37);
    // The spread of a standard deviation from 200 runs is 1/√400 = 5 %; 37 of them stay inside 4 of these.
    expect(Math.max(...ratios), `seed ${seed}`).toBeLessThanOrEqual(1.2);
    expect(Math.min(...ratios), `seed ${seed}`).toBeGreaterThanOrEqual(0.8);
    // One clean rail in a hundred is accused: 2 of 200, and hardly ever 9.
    expect(accused, `seed ${seed}`).toBeLessThanOrEqual(9);
  }, 60_000);

  it('name a slip of 5 mm, whichever distance it is in, and its size', () => {
    const seed = seedOr(77);
    const next = randomFrom(seed);
    for (const slipped of pairs.keys()) {
      const by = next() < 0.5 ? 5 : -5;
      const fit = fitted((i) => SIGMA * gauss(next) + (i === slipped ? by : 0));
      const [first] = fit.slips;
      const told = `seed ${seed}, distance ${slipped}`;
      expect(first?.distance, told).toBe(slipped);
      // Its own estimate is as good as σ/√r, at most 0.15/√0.2 = 0.34 mm; four of those.
      expect(Math.abs((first?.by ?? 0) - by), told).toBeLessThan(1.4);
    }
  }, 60_000);
});

it('the bound of a residual follows the normal law', () => {
  // Two-sided 1 % and 0.1 %: 2.5758 and 3.2905 (Abramowitz and Stegun, table 26.5).
  expect(normalAbove(0.005)).toBeCloseTo(2.5758293035, 9);
  expect(normalAbove(0.0005)).toBeCloseTo(3.2905267315, 9);
  expect(normalAbove(0.5)).toBeCloseTo(0, 9);
  expect(normalAbove(0.2)).toBeCloseTo(0.8416212336, 9);
});

import { fitHoles, type HoleFit, mapPoint, shiftMap, thenMap, turnMap } from '../../geometry/index.js';
import type { Point2 } from '../design.js';
import type { Place } from '../field/index.js';
import { signedDoubleArea } from '../outline.js';
import type { DistanceSurvey, RoughHoles } from '../rail-survey.js';
import type { Notes } from './notes.js';

export interface DistanceKeys {
  readonly distances: readonly (readonly [number, number, number])[] | undefined;
  readonly plus_minus: number | undefined;
  readonly numbered: 'clockwise' | 'counter-clockwise' | undefined;
  readonly placed: readonly (readonly [number, number, number])[] | undefined;
  readonly rough: readonly Point2[] | undefined;
  readonly reach: number | undefined;
}

type Placed = readonly [readonly [number, number, number], readonly [number, number, number]];

/**
 * Holes on the page from the distances between them. The page has x up and y to its left, so numbers that run
 * counter-clockwise as one looks at it run counter-clockwise in x and y too.
 */
export const holesFromDistances = (
  keys: DistanceKeys & { readonly distances: readonly (readonly [number, number, number])[] },
  path: Place,
  notes: Notes,
): DistanceSurvey | null => {
  const { distances, numbered, rough } = keys;
  const placed = keys.placed as Placed;
  const count = Math.max(...distances.map(([a, b]) => Math.max(a, b)), ...placed.map(([hole]) => hole));
  const sigma = notes.take(keys.plus_minus, [...path, 'plus_minus'], 'length', 'hole distance');
  const turn = numbered === undefined ? turnOf(rough ?? []) : numbered === 'clockwise' ? -1 : 1;
  if (rough !== undefined && !roughGoesWith(rough, count, turn, path, notes)) return null;
  const fit = fitHoles(
    count,
    distances.map(([a, b, length]) => ({ holes: [a - 1, b - 1], length })),
    [placed[0][0] - 1, placed[1][0] - 1],
    sigma,
    turn,
    rough ?? null,
  );
  if ('kind' in fit) {
    const advice = 'Each hole needs distances to three others; pan worksheet proposes which.';
    const says =
      fit.kind === 'flips'
        ? `let hole ${fit.hole + 1} lie on either side of a line`
        : `leave ${fit.holes.length > 0 ? `hole ${fit.holes.map((hole) => hole + 1).join(', ')}` : 'the holes'} free to move`;
    notes.refuse([...path, 'distances'], { code: 'input-missing', says, advice });
    return null;
  }
  return surveyOf(fit, distances, placed, sigma);
};

const turnOf = (rough: readonly Point2[]): 1 | -1 => (signedDoubleArea(rough) < 0 ? -1 : 1);

const roughGoesWith = (
  rough: readonly Point2[],
  count: number,
  turn: 1 | -1,
  path: Place,
  notes: Notes,
): boolean => {
  const says =
    rough.length !== count
      ? `has ${rough.length} holes, and the distances number ${count}`
      : turnOf(rough) !== turn
        ? 'runs the other way round than numbered says'
        : null;
  if (says !== null) notes.refuse([...path, 'rough'], { code: 'input-range', says });
  return says === null;
};

const surveyOf = (
  fit: HoleFit,
  distances: readonly (readonly [number, number, number])[],
  [first, second]: Placed,
  sigma: number,
): DistanceSurvey => {
  const toPage = thenMap(
    turnMap(Math.atan2(second[2] - first[2], second[1] - first[1])),
    shiftMap([first[1], first[2]]),
  );
  const ahead = fit.points[second[0] - 1] as Point2;
  return {
    plusMinus: sigma,
    critical: fit.critical,
    distances: distances.map(([a, b, measured], i) => ({
      holes: [a, b],
      measured,
      residual: fit.residuals[i] as number,
      redundancy: fit.redundancy[i] as number,
      standardized: fit.standardized[i] as number,
    })),
    slips: fit.slips.map(({ distance, by }) => {
      const [a, b, measured] = distances[distance] as readonly [number, number, number];
      return { holes: [a, b], measured, by };
    }),
    holes: fit.points.map((point, i) => ({
      at: mapPoint(toPage, point),
      plusMinus: worstSpread(fit.variance[i] as readonly [number, number, number]),
    })),
    placedOff: Math.hypot(ahead[0], ahead[1]) - Math.hypot(second[1] - first[1], second[2] - first[2]),
  };
};

/** Standard deviation along the direction held worst: the root of the larger eigenvalue. */
const worstSpread = ([xx, xy, yy]: readonly [number, number, number]): number =>
  Math.sqrt((xx + yy) / 2 + Math.hypot((xx - yy) / 2, xy));

/** Holes known roughly, with the two that hold the others: those placed, else the two farthest apart. */
export const roughHoles = ({ rough, placed, reach }: DistanceKeys): RoughHoles | null => {
  if (rough === undefined) return null;
  const pairs = rough.flatMap((p, a) => rough.slice(a + 1).map((q, i) => ({ a, b: a + 1 + i, p, q })));
  const far = pairs.reduce((best, one) =>
    Math.hypot(one.q[0] - one.p[0], one.q[1] - one.p[1]) >
    Math.hypot(best.q[0] - best.p[0], best.q[1] - best.p[1])
      ? one
      : best,
  );
  const held = placed?.map(([hole]) => hole - 1) ?? [];
  const [first = far.a, second = far.b] = held.every((hole) => hole < rough.length) ? held : [];
  return { at: rough, placed: [first, second], reach: reach ?? null };
};

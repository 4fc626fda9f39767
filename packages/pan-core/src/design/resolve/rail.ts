import type { Point2, Rail, RailHole } from '../design.js';
import type { ValueOf } from '../field/index.js';
import type { railField, railHolesField } from '../keys/rail-keys.js';
import { signedDoubleArea } from '../outline.js';
import type { Notes } from './notes.js';

export type RailKeys = ValueOf<ReturnType<typeof railField>>;
export type RailHolesKeys = ValueOf<ReturnType<typeof railHolesField>>;

/**
 * Rail points are written as they stand on the drawing or trace with x up the page, toward the front of
 * the car, and y positive to the left of the page. Seen from above, the left of the page is the left of the
 * car; seen from below it is the right, so y changes sign on reading. Not said, it is read as from above.
 */
const turnedOver = (keys: RailKeys): boolean => keys.seen_from === 'below';

// 0 − y rather than −y: a mirrored 0 stays +0.
const onCar = ([x, y]: Point2, turned: boolean): Point2 => [x, turned ? 0 - y : y];

export const resolveRail = (keys: RailKeys, notes: Notes): Rail => {
  const path = ['engine', 'rail'];
  const written = keys.outline ?? rectangle(keys.length ?? 0, keys.width ?? 0);
  const points = written.map((point) => onCar(point, turnedOver(keys)));
  const outline = signedDoubleArea(points) > 0 ? points : points.reverse();
  return {
    outline,
    land: notes.take(keys.land, [...path, 'land'], 'length', 'rail land'),
    seenFrom: keys.seen_from ?? null,
  };
};

const rectangle = (length: number, width: number): readonly Point2[] => [
  [0, -width / 2],
  [length, -width / 2],
  [length, width / 2],
  [0, width / 2],
];

export const resolveRailHoles = (keys: RailHolesKeys | undefined, rail: RailKeys): readonly RailHole[] => {
  if (keys === undefined) return [];
  const turned = turnedOver(rail);
  if (isHoleList(keys)) return keys.map(({ at, size }) => ({ at: onCar(at, turned), thread: size }));
  const { size, sides, ends, at } = keys;
  const xs = (rail.outline ?? rectangle(rail.length ?? 0, rail.width ?? 0)).map(([x]) => x);
  const points: Point2[] = [];
  if (sides !== undefined) {
    const step = (sides.x_last - sides.x_first) / (sides.count - 1);
    for (const y of [-sides.y, sides.y]) {
      for (let i = 0; i < sides.count; i++) {
        points.push([i === sides.count - 1 ? sides.x_last : sides.x_first + i * step, y]);
      }
    }
  }
  if (ends !== undefined) {
    for (const x of [Math.min(...xs) + ends.inset, Math.max(...xs) - ends.inset]) {
      for (const y of ends.y) points.push([x, y]);
    }
  }
  points.push(...(at ?? []));
  return points.map((point) => ({ at: onCar(point, turned), thread: size }));
};

const isHoleList = (keys: RailHolesKeys): keys is Extract<RailHolesKeys, readonly unknown[]> =>
  Array.isArray(keys);

/** Whether turning the rail over would change it, so that its side must be known. */
export const needsSide = (keys: RailKeys, holes: readonly RailHole[]): boolean =>
  keys.outline !== undefined ||
  holes.some(
    ({ at: [x, y] }) => !holes.some(({ at }) => Math.abs(at[0] - x) < 1e-6 && Math.abs(at[1] + y) < 1e-6),
  );

import { PanError, type Problem } from '../errors/index.js';
import type { TriangleSoup } from '../geometry/index.js';
import { freeze } from '../numeric/index.js';
import type { Design, Obstacle, ReadDesign } from './design.js';
import type { Scan } from './solid-shape.js';

/** A scan that a design names, and the place of its name in the design file. */
export interface NamedScan {
  readonly file: string;
  readonly unit: Scan['unit'];
  readonly path: readonly (string | number)[];
}

/** The scan files that distances in this design need. */
export const namedScans = (design: Design): readonly NamedScan[] =>
  design.chassis.obstacles.flatMap(({ shape }, i) =>
    shape.kind === 'scan'
      ? [{ file: shape.file, unit: shape.unit, path: ['chassis', 'obstacles', i, 'scan'] }]
      : [],
  );

/** Across its longest side no engine bay is smaller or larger than this, mm; its unit is another one then. */
const SMALLEST = 10;
const LARGEST = 50_000;

/**
 * A design with the triangles of its scans, by file name; a scan that is not among them stays unread.
 *
 * @throws PanError `input-range` where a scan's unit cannot be the one that is said or assumed
 */
export const withScans = (read: ReadDesign, soups: ReadonlyMap<string, TriangleSoup>): ReadDesign => {
  const { chassis } = read.design;
  const problems = namedScans(read.design).flatMap((scan) => sizeProblem(scan, soups.get(scan.file)) ?? []);
  if (problems.length > 0) throw new PanError(problems);
  const obstacles = chassis.obstacles.map((obstacle): Obstacle => {
    const { shape } = obstacle;
    const soup = shape.kind === 'scan' ? soups.get(shape.file) : undefined;
    return shape.kind === 'scan' && soup !== undefined
      ? { ...obstacle, shape: { ...shape, soup } }
      : obstacle;
  });
  return freeze({ ...read, design: { ...read.design, chassis: { ...chassis, obstacles } } });
};

const sizeProblem = ({ unit, path }: NamedScan, soup: TriangleSoup | undefined): Problem | null => {
  if (soup === undefined) return null;
  const longest = unit.size * longestSide(soup.corners);
  if (longest >= SMALLEST && longest <= LARGEST) return null;
  return {
    code: 'input-range',
    path: [...path.slice(0, -1), 'unit'],
    message: `The scan is ${Number(longest.toPrecision(3))} mm across when its unit is ${unit.name}; from ${SMALLEST} to ${LARGEST} mm can be.`,
    expected: 'unit: mm, in or m',
    value: longest,
    limit: longest < SMALLEST ? SMALLEST : LARGEST,
    unit: 'mm',
    advice: 'Say the unit that the scan was saved in.',
  };
};

const longestSide = (corners: Float32Array): number => {
  let most = 0;
  for (let axis = 0; axis < 3; axis++) {
    let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
    for (let i = axis; i < corners.length; i += 3) {
      const value = corners[i]!;
      if (value < low) low = value;
      if (value > high) high = value;
    }
    most = Math.max(most, high - low);
  }
  return most;
};

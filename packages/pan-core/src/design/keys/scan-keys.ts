import {
  checked,
  choice,
  type Fault,
  list,
  optional,
  plainNumber,
  section,
  text,
  tuple,
} from '../field/index.js';
import { defaultQuantity } from '../resolve/notes.js';
import { fitOfMatches, type Match, unitSize } from '../scan-placement.js';
import type { ScanUnit } from '../solid-shape.js';
import { oneOf } from './items.js';
import type { Kit } from './kit.js';

/** Coordinates in the file's own unit, whatever that is, so no length with a unit. */
const FARTHEST = -1e9;

export const scanField = text(
  'a measured surface as an STL file, binary or text; its name as seen from this design file',
  200,
  'bay.stl',
);

export const scanUnitField = choice('what one unit of the scan is; an STL file does not say', [
  'mm',
  'in',
  'm',
]);

const pointInScan = tuple(
  'the point in the scan, in the scan’s own unit and axes',
  (['x', 'y', 'z'] as const).map((axis) => plainNumber(axis, FARTHEST)) as unknown as Three,
);
type Three = readonly [Plain, Plain, Plain];
type Plain = ReturnType<typeof plainNumber>;

/** Left out, the scan's axes are the chassis's own. */
export const placementField = (k: Kit) =>
  checked(
    section('how the scan lies in the axes of the chassis; left out, its axes are those', {
      turn: optional(
        tuple('turns about x, then y, then z', [
          k.angle('about x', WHOLE_TURN),
          k.angle('about y', WHOLE_TURN),
          k.angle('about z', WHOLE_TURN),
        ]),
      ),
      origin: optional(k.point3('where the scan’s own zero lies')),
      matches: optional(
        list(
          'three points or more that were found in the scan and measured on the car',
          section('one point', { in_scan: pointInScan, in_chassis: k.point3('the same point on the car') }),
          { fewest: 3, most: 50 },
        ),
      ),
    }),
    ({ turn, origin, matches }, report) => {
      const plain = turn !== undefined || origin !== undefined;
      oneOf({ 'turn and origin': plain ? true : undefined, matches }, report);
    },
  );

const WHOLE_TURN = { from: '-360 deg', to: '360 deg' } as const;

interface PlacementKeys {
  readonly matches: readonly Match[] | undefined;
}

/** What is wrong with a placement by matched points. */
export const wronglyPlaced = (
  { matches }: PlacementKeys,
  unit: ScanUnit | undefined,
  given: number | undefined,
): Fault | null => {
  if (matches === undefined) return null;
  const fit = fitOfMatches(matches, unitSize(unit ?? 'mm'));
  if (fit === null) {
    return {
      code: 'input-range',
      says: 'lie in a line, so that the scan could be turned about it',
      expected: 'three points that make a broad triangle',
      advice: 'Match a point well to the side of the others.',
    };
  }
  const plusMinus = given ?? defaultQuantity('plus or minus', 'length');
  const most = Math.max(...fit.residuals);
  if (most <= plusMinus) return null;
  return {
    code: 'input-range',
    says: `do not fit: they end up to ${most.toFixed(1)} mm from their mates (${fit.residuals.map((r) => r.toFixed(1)).join(', ')} mm), more than plus_minus ${plusMinus.toFixed(1)} mm`,
    value: most,
    limit: plusMinus,
    unit: 'mm',
    advice: 'Measure the points again, check the unit of the scan, or say a larger plus_minus.',
  };
};

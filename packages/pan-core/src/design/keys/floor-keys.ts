import { checked, type Field, list, type Report, tuple } from '../field/index.js';
import type { Kit } from './kit.js';

type Points = readonly (readonly [number, number])[];

const mm = (value: number): string => `${Number(value.toFixed(3))} mm`;

export const floorField = (k: Kit): Field<Points> =>
  checked(
    list(
      'inside of the floor from the front to the rear, [[x, down], …]; the end walls rise from its ends',
      tuple('floor point', [
        k.length('x', { from: '0 mm', to: '5000 mm' }),
        k.length('down', { above: '0 mm', to: '2000 mm' }),
      ]),
      { fewest: 2, most: 60 },
    ),
    checkFloor,
  );

/**
 * As x never increases along the line, it can only meet itself by turning back on an upright piece; the
 * implied end walls from the rail are upright pieces too.
 */
const checkFloor = (points: Points, report: Report): void => {
  points.forEach(([x, down], i) => {
    const last = points[i - 1];
    if (last === undefined) return;
    if (x > last[0]) {
      report(
        {
          code: 'shape-floor',
          message: `Floor x never increases front to rear, and point ${i} at x = ${mm(x)} is ahead of point ${i - 1} at x = ${mm(last[0])}.`,
          value: x,
          limit: last[0],
          unit: 'mm',
          advice: 'List the points from the front of the pan to the rear.',
        },
        [i],
      );
    } else if (x === last[0] && down === last[1]) {
      report(
        {
          code: 'shape-floor',
          says: 'is the same point as the one before it',
          advice: 'Leave one of them out.',
        },
        [i],
      );
    }
  });
  const line: Points = [[points[0]?.[0] ?? 0, 0], ...points, [points.at(-1)?.[0] ?? 0, 0]];
  for (let i = 1; i + 1 < line.length; i++) {
    const [a, b, c] = line.slice(i - 1, i + 2) as [Points[0], Points[0], Points[0]];
    if (a[0] === b[0] && b[0] === c[0] && (b[1] - a[1]) * (c[1] - b[1]) < 0) {
      report(
        {
          code: 'shape-floor',
          message: `The floor line runs back over itself at x = ${mm(b[0])}, between ${mm(a[1])} and ${mm(c[1])} down.`,
          advice: 'Give an upright piece only its two ends.',
        },
        [Math.min(Math.max(i - 1, 0), points.length - 1)],
      );
    }
  }
  if (points[0]?.[0] === points.at(-1)?.[0]) {
    report({ code: 'shape-floor', says: 'has no length: all its points are at the same x' });
  }
};

/** Half-widths along x, in any order. */
export const halfWidthField = (k: Kit, side: 'left' | 'right'): Field<Points> =>
  checked(
    list(
      `inside half-width on the ${side} along x, [[x, half-width], …]`,
      tuple('station', [
        k.length('x', { from: '0 mm', to: '5000 mm' }),
        k.length('half-width', { above: '0 mm', to: '2000 mm' }),
      ]),
      { fewest: 1, most: 60 },
    ),
    (stations, report) => {
      const first = new Map<number, number>();
      stations.forEach(([x], i) => {
        const earlier = first.get(x);
        if (earlier === undefined) first.set(x, i);
        else {
          report(
            {
              code: 'shape-width',
              says: `is at x = ${mm(x)}, and so is entry ${earlier}; one x has one width`,
              value: x,
              unit: 'mm',
            },
            [i],
          );
        }
      });
    },
  );

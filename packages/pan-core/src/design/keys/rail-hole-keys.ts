import { assumedText } from '../default.js';
import {
  checked,
  choice,
  count,
  either,
  isKeys,
  isList,
  list,
  optional,
  type Report,
  section,
  text,
  tuple,
} from '../field/index.js';
import type { Kit } from './kit.js';
import { drawingFile } from './rail-keys.js';
import { boltSize } from './thread.js';

/** Most holes that are numbered; their distances are solved together. */
export const MOST_NUMBERED = 40;

const numberField = (about: string) => count(about, 1, MOST_NUMBERED);

const sizeField = (k: Kit) =>
  section('a drawn diameter and what it is for', {
    drawn: k.size('diameter as drawn', '100 mm'),
    size: boltSize('thread of the bolt'),
  });

const distanceFields = (k: Kit) => ({
  distances: optional(
    list(
      'distances between hole centres, [[hole, hole, distance], …]',
      tuple('a distance', [numberField('hole'), numberField('hole'), k.size('distance')]),
      { fewest: 3, most: 1000 },
    ),
  ),
  plus_minus: optional(
    k.length('how well one distance is measured', { from: '0.01 mm', to: '5 mm' }),
    assumedText('hole distance'),
  ),
  numbered: optional(
    choice('way round the holes are numbered, as you look at the rail', ['clockwise', 'counter-clockwise']),
  ),
  placed: optional(
    list(
      'two holes measured from the rear face and the centre line, [[hole, x, y], …]; the second gives direction only',
      tuple('a hole', [numberField('hole'), k.length('x'), k.length('y')]),
      { fewest: 2, most: 2 },
    ),
  ),
  rough: optional(
    list(
      'the holes in the order of their numbers, to the nearest centimetre, [[x, y], …]',
      k.point2('hole'),
      {
        fewest: 3,
        most: MOST_NUMBERED,
      },
    ),
  ),
  reach: optional(k.size('longest distance your calliper or tape takes')),
});

interface HoleKeys {
  readonly size: number | undefined;
  readonly drawing: string | undefined;
  readonly layer: string | undefined;
  readonly sizes: readonly unknown[] | undefined;
  readonly sides: unknown;
  readonly ends: unknown;
  readonly at: unknown;
  readonly distances: readonly (readonly [number, number, number])[] | undefined;
  readonly plus_minus: number | undefined;
  readonly numbered: string | undefined;
  readonly placed: readonly (readonly [number, number, number])[] | undefined;
  readonly rough: readonly unknown[] | undefined;
  readonly reach: number | undefined;
}

const checkHoles = (keys: HoleKeys, report: Report): void => {
  const { drawing, distances, rough, placed } = keys;
  const { layer, sizes, numbered, plus_minus, reach } = keys;
  belong({ layer, sizes }, drawing !== undefined, 'drawing', report);
  const byNumber = distances !== undefined || rough !== undefined;
  belong({ placed, numbered, plus_minus, reach }, byNumber, 'distances', report);
  const patterned = keys.sides !== undefined || keys.ends !== undefined || keys.at !== undefined;
  if (keys.size === undefined && (patterned || byNumber || drawing === undefined)) {
    report({ code: 'input-missing', says: 'is missing', expected: 'a metric thread such as M8' }, ['size']);
  }
  if (distances === undefined) return;
  if (placed === undefined) {
    const expected = 'two holes with their places: [[hole, x, y], [hole, x, y]]';
    report({ code: 'input-missing', says: 'is missing', expected, found: 'nothing' }, ['placed']);
  } else if (placed[0]?.[0] === placed[1]?.[0]) {
    report({ code: 'input-range', says: 'names one hole twice', expected: 'two holes' }, ['placed']);
  }
  if (numbered === undefined && rough === undefined) {
    const expected = 'clockwise or counter-clockwise, as you look at the rail';
    report({ code: 'input-missing', says: 'is missing', expected, found: 'nothing' }, ['numbered']);
  }
  checkDistances(distances, report);
};

const checkDistances = (distances: readonly (readonly [number, number, number])[], report: Report): void => {
  const seen = new Map<string, number>();
  distances.forEach(([a, b], i) => {
    const pair = `${Math.min(a, b)} ${Math.max(a, b)}`;
    if (a === b) report({ code: 'input-range', says: 'goes from a hole to itself' }, ['distances', i]);
    const before = seen.get(pair);
    if (before !== undefined) {
      const says = `measures holes ${a} and ${b} again, as distances[${before}] does`;
      report({ code: 'input-range', says, advice: 'Keep the mean of both.' }, ['distances', i]);
    }
    seen.set(pair, i);
  });
};

const belong = (
  keys: Readonly<Record<string, unknown>>,
  there: boolean,
  to: string,
  report: Report,
): void => {
  for (const [key, value] of Object.entries(keys)) {
    if (value === undefined || there) continue;
    report({ code: 'input-key', says: `goes with ${to}, and there is none here`, expected: to }, [key]);
  }
};

const sidesField = (k: Kit) =>
  checked(
    section('holes evenly along both sides', {
      y: k.size('distance of the rows from the centre line', '1000 mm'),
      x_first: k.length('x of the rearmost hole'),
      x_last: k.length('x of the foremost hole'),
      count: count('holes on each side', 2, 60),
    }),
    ({ x_first, x_last }, report) => {
      if (x_first < x_last) return;
      report(
        {
          code: 'input-range',
          says: `is ${x_last} mm; it must be more than x_first, ${x_first} mm`,
          value: x_last,
          limit: x_first,
          unit: 'mm',
        },
        ['x_last'],
      );
    },
  );

const endsField = (k: Kit) =>
  section('holes across both ends', {
    inset: k.size('distance from the ends of the rail', '500 mm'),
    y: list('y of the holes', k.length('y'), { fewest: 1, most: 30 }),
  });

/** Either a pattern, or a list of `{at, size}`. */
export const railHolesField = (k: Kit) =>
  either('bolt holes of the rail', [
    {
      when: isKeys,
      field: checked(
        section('holes by pattern, by drawing or by the distances between them', {
          size: optional(boltSize('thread of the bolts')),
          sides: optional(sidesField(k)),
          ends: optional(endsField(k)),
          at: optional(list('holes one by one, [[x, y], …]', k.point2('hole'), { most: 200 })),
          drawing: optional(drawingFile('a drawing of the holes, which may be the outline’s')),
          layer: optional(
            text('layer of the drawing that holds them; all of them when left out', 100, 'HOLES'),
          ),
          sizes: optional(list('threads by the diameter they are drawn with', sizeField(k), { most: 20 })),
          ...distanceFields(k),
        }),
        checkHoles,
      ),
    },
    {
      when: isList,
      field: list(
        'holes one by one',
        section('a hole', { at: k.point2('hole'), size: boltSize('thread of the bolt') }),
        { most: 200 },
      ),
    },
  ]);

import { assumedText } from '../default.js';
import {
  checked,
  choice,
  count,
  either,
  type Field,
  foundText,
  isKeys,
  isList,
  isScalar,
  list,
  optional,
  orUnknown,
  type Refusal,
  type Report,
  refused,
  section,
} from '../field/index.js';
import { crossing, doubledPoint } from '../outline.js';
import type { Kit } from './kit.js';
import { boltSize } from './thread.js';

/** A key whose other form is the name of a file this version does not read. */
export const fileNotRead = (about: string, says: string, advice: string): Field<never> => ({
  about: {
    form: 'text',
    longest: 200,
    sample: 'a file',
    about,
    required: true,
    assumed: null,
    mayBeUnknown: false,
  },
  read: (raw, report): never | Refusal => {
    report({ code: 'input-type', says, advice, found: foundText(raw) });
    return refused;
  },
});

const outlineField = (k: Kit) =>
  either('outer edge of the pan face on the block', [
    {
      when: isList,
      field: checked(
        list('corners in order, [[x, y], …]', k.point2('corner'), { fewest: 3, most: 400 }),
        checkOutline,
      ),
    },
    {
      when: isScalar,
      field: fileNotRead(
        'a drawing of the outline (not read by this version)',
        'names a drawing; outlines from drawings are not read by this version',
        'Write the corners as a list: [[x, y], …].',
      ),
    },
  ]);

type Outline = readonly (readonly [number, number])[];

const checkOutline = (points: Outline, report: Report): void => {
  const doubled = doubledPoint(points);
  if (doubled !== null) {
    const says =
      doubled === 0 ? 'is the same point as the last one' : 'is the same point as the one before it';
    report({ code: 'shape-rail', says, advice: 'Leave one of them out; the outline closes by itself.' }, [
      doubled,
    ]);
    return;
  }
  const cut = crossing(points);
  if (cut !== null) {
    const message = `The rail outline crosses itself: its edges from corner ${cut[0]} and from corner ${cut[1]} meet.`;
    report({ code: 'shape-rail', message, advice: 'List the corners in order around the rail.' }, [cut[1]]);
  }
  points.forEach(([x], i) => {
    if (x >= 0) return;
    report(
      {
        code: 'shape-rail',
        says: `is at x = ${x} mm, behind the rear face of the block`,
        expected: 'x of 0 or more',
        value: x,
        limit: 0,
        unit: 'mm',
      },
      [i],
    );
  });
};

export const railField = (k: Kit) =>
  checked(
    section('the pan face of the block, at its outer edge', {
      length: optional(k.size('length of a rectangular rail, from the rear face of the block forward')),
      width: optional(k.size('width of a rectangular rail, over the outer edges')),
      outline: optional(outlineField(k)),
      seen_from: orUnknown(
        choice('side the rail was traced from; seen from below, y is turned over on reading', [
          'below',
          'above',
        ]),
      ),
      land: optional(k.size('width of the sealing face', '100 mm'), assumedText('rail land')),
    }),
    ({ length, width, outline }, report) => {
      if (outline !== undefined) {
        for (const [key, value] of Object.entries({ length, width })) {
          if (value === undefined) continue;
          report(
            {
              code: 'input-key',
              says: 'cannot stand beside outline',
              expected: 'length and width, or outline',
            },
            [key],
          );
        }
        return;
      }
      for (const [key, value] of Object.entries({ length, width })) {
        if (value !== undefined) continue;
        report(
          {
            code: 'input-missing',
            says: 'is missing',
            expected: 'length and width, or outline',
            found: 'nothing',
          },
          [key],
        );
      }
    },
  );

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
      field: section('a pattern of holes', {
        size: boltSize('thread of the bolts'),
        sides: optional(sidesField(k)),
        ends: optional(endsField(k)),
        at: optional(list('holes one by one, [[x, y], …]', k.point2('hole'), { most: 200 })),
      }),
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

export const crankField = (k: Kit) =>
  section('the crank, for the sweep of the rods', {
    centre_above_rail: orUnknown(
      k.length('height of the crank centre line above the rail', { from: '-200 mm', to: '500 mm' }),
    ),
    stroke: orUnknown(k.size('stroke', '300 mm')),
    big_end_reach: orUnknown(
      k.size('from the crankpin centre to the farthest point of the rod bolt or cap', '200 mm'),
    ),
    throws: orUnknown(list('x of each throw', k.length('x'), { fewest: 1, most: 24 })),
    throw_width: optional(k.size('width along x swept by one big end', '300 mm'), assumedText('throw width')),
  });

import { assumedText } from '../default.js';
import {
  checked,
  choice,
  count,
  either,
  type Field,
  foundText,
  isList,
  isScalar,
  list,
  optional,
  orUnknown,
  type Refusal,
  type Report,
  refused,
  section,
  text,
  tuple,
} from '../field/index.js';
import { crossing, doubledPoint } from '../outline.js';
import { nameField } from './items.js';
import type { Kit } from './kit.js';

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
    { when: isScalar, field: drawingFile('a drawing of the outline') },
  ]);

/** The name of a drawing or of a table of points, beside the design file. */
export const drawingFile = (about: string): Field<string> =>
  text(`${about}: a DXF or CSV file`, 200, 'rail.dxf');

type Outline = readonly (readonly [number, number])[];

export const checkOutline = (points: Outline, report: Report): void => {
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

const axisField = (k: Kit, axis: string) =>
  tuple(`a known distance along the drawing’s ${axis}: [as drawn, true]`, [
    k.size('as drawn'),
    k.size('true'),
  ]);

const markField = (k: Kit) =>
  checked(
    section('a thing found on the engine and on the drawing', {
      name: nameField('rear left dowel'),
      drawn: optional(k.point2('where it is on the drawing, as drawn')),
      hole: optional(count('its number among the holes', 1, 200)),
      at: optional(k.point2('where it is on the engine, y to the left of the car; pump_inlet when left out')),
    }),
    ({ drawn, hole }, report) => {
      if ((drawn === undefined) !== (hole === undefined)) return;
      report({ code: 'input-key', says: 'needs either drawn or hole', expected: 'one of drawn, hole' });
    },
  );

/** Keys that say how a drawing lies; they mean nothing without one. */
export const DRAWING_KEYS = ['layer', 'drawn_in', 'origin', 'forward', 'close_gaps', 'calibrate'] as const;

export const railField = (k: Kit) =>
  checked(
    section('the pan face of the block, at its outer edge', {
      length: optional(k.size('length of a rectangular rail, from the rear face of the block forward')),
      width: optional(k.size('width of a rectangular rail, over the outer edges')),
      outline: optional(outlineField(k)),
      layer: optional(
        text('layer of the drawing that holds the outline; all of them when left out', 100, 'RAIL'),
      ),
      drawn_in: optional(
        choice('unit of the drawing, where it does not say or says wrong', ['mm', 'cm', 'm', 'in', 'ft']),
      ),
      origin: optional(
        k.point2('point as drawn that is the rear face of the block on the crank’s centre line'),
        assumedText('drawing origin'),
      ),
      forward: optional(
        either('way to the front of the engine on the drawing', [
          { when: isScalar, field: choice('its side', ['right', 'up', 'left', 'down']) },
          { when: isList, field: k.point2('a point as drawn, ahead of origin on the crank’s centre line') },
        ]),
        assumedText('drawing forward'),
      ),
      close_gaps: optional(
        k.length('ends of lines nearer than this are taken to meet', { from: '0 mm', to: '2 mm' }),
        assumedText('close gaps'),
      ),
      calibrate: optional(
        section('known distances that correct a scanner or a photograph', {
          x: axisField(k, 'X'),
          y: axisField(k, 'Y'),
        }),
      ),
      marks: optional(
        list('things that tell a rail from its mirror image, such as the port or a dowel', markField(k), {
          most: 40,
        }),
      ),
      seen_from: orUnknown(
        choice('side the rail was traced from; seen from below, y is turned over on reading', [
          'below',
          'above',
        ]),
      ),
      land: optional(k.size('width of the sealing face', '100 mm'), assumedText('rail land')),
    }),
    (keys, report) => {
      const { length, width, outline } = keys;
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

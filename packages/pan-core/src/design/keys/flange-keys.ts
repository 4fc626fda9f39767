import { assumedText } from '../default.js';
import {
  checked,
  choice,
  either,
  isList,
  isScalar,
  list,
  optional,
  type Report,
  section,
} from '../field/index.js';
import { oneOf } from './items.js';
import type { Kit } from './kit.js';

const grooveField = (k: Kit, about: string) =>
  section(about, {
    width: k.size('width', '30 mm'),
    depth: k.size('depth', '20 mm'),
  });

const dowelField = (k: Kit) =>
  section('a dowel that stands in the block', {
    at: k.point2('middle of the dowel'),
    size: k.length('diameter of the dowel', { from: '3 mm', to: '25 mm' }),
    fit: optional(
      choice('close places the pan, easy lets a second dowel be off its mark', ['close', 'easy']),
      assumedText('dowel fit'),
    ),
  });

const splitField = (k: Kit) =>
  checked(
    section('a flange in two pieces, where the plate is too narrow for one', {
      across_at: optional(k.length('x of a joint that crosses both sides')),
      lengthwise_at: optional(k.length('y of a joint that crosses both ends')),
      joint: optional(choice('shape of the joint', ['butt', 'scarf']), assumedText('split joint')),
    }),
    ({ across_at, lengthwise_at }, report) => oneOf({ across_at, lengthwise_at }, report),
  );

const endSealField = (k: Kit) =>
  checked(
    section('a round cap or seal housing that hangs below the rail', {
      end: choice('end of the rail', ['front', 'rear']),
      radius: k.size('radius that the seal closes on', '300 mm'),
      centre_above_rail: k.length('height of its centre above the rail', { from: '0 mm', to: '300 mm' }),
      across: optional(k.length('y of its centre'), assumedText('end seal across')),
      land: optional(
        k.length('metal of the end plate below the arc', { from: '3 mm', to: '100 mm' }),
        assumedText('end seal land'),
      ),
      groove: optional(grooveField(k, 'channel for the seal, milled into the arc')),
    }),
    ({ radius, centre_above_rail }, report) => {
      if (centre_above_rail < radius) return;
      report(
        {
          code: 'input-range',
          says: `is ${centre_above_rail} mm: a round of radius ${radius} mm does not reach below the rail`,
          value: centre_above_rail,
          limit: radius,
          unit: 'mm',
          advice: 'Leave the end seal out: a flat flange closes this end.',
        },
        ['centre_above_rail'],
      );
    },
  );

const drillField = (k: Kit) =>
  either('holes that are drilled once the flange is welded and faced, and only marked before', [
    { when: isScalar, field: choice('which holes', ['all', 'dowels']) },
    {
      when: isList,
      field: list('their centres, as in rail_holes or dowels', k.point2('hole'), { most: 200 }),
    },
  ]);

/** At most one seal at each end. */
const endsOnce = (seals: readonly { readonly end: string }[], report: Report): void => {
  seals.forEach(({ end }, i) => {
    if (seals.findIndex((seal) => seal.end === end) === i) return;
    report({ code: 'input-range', says: `is the second at the ${end}`, expected: 'one at each end' }, [
      'end_seals',
      i,
      'end',
    ]);
  });
};

export const flangeField = (k: Kit) =>
  checked(
    section('the plate that bolts to the rail', {
      thickness: optional(
        k.length('thickness', { from: '2 mm', to: '30 mm' }),
        'by material: 10 mm aluminium, 8 mm steel',
      ),
      beyond: optional(
        k.length('how far it stands beyond the rail', { from: '0 mm', to: '100 mm' }),
        assumedText('flange beyond rail'),
      ),
      fit: optional(choice('bolt holes by ISO 273', ['fine', 'medium', 'coarse']), assumedText('hole fit')),
      gasket: optional(
        choice('what seals it to the rail', [
          'sealant',
          'soft rubber',
          'hard rubber',
          'rubber on cloth',
          'paper',
        ]),
        assumedText('flange gasket'),
      ),
      groove: optional(grooveField(k, 'channel for the bead, milled into the face')),
      dowels: optional(list('dowels that stand in the rail', dowelField(k), { most: 8 })),
      drill_after_weld: optional(drillField(k)),
      lighten: optional(
        section('relief between the bolts along the outer edge', {
          land: k.length('metal that stays beside the opening', { from: '3 mm', to: '200 mm' }),
        }),
      ),
      split: optional(splitField(k)),
      end_seals: optional(list('ends where the block is round below the rail', endSealField(k), { most: 2 })),
    }),
    ({ end_seals }, report) => endsOnce(end_seals ?? [], report),
  );

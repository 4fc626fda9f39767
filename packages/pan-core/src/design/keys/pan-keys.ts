import { assumedText } from '../default.js';
import { checked, choice, either, flag, isKeys, isScalar, optional, section, tuple } from '../field/index.js';
import { materialNames } from '../material.js';
import { signedDoubleArea } from '../outline.js';
import { flangeField } from './flange-keys.js';
import { floorField, halfWidthField } from './floor-keys.js';
import { corners, named, nameField, oneOf } from './items.js';
import { jointsField } from './joint-keys.js';
import type { Kit } from './kit.js';

/** One length, or one at each end. */
const endToEnd = (k: Kit, about: string) =>
  either(about, [
    { when: isScalar, field: k.size(about) },
    {
      when: isKeys,
      field: section(`${about}, at each end`, {
        rear: k.size('at the rear end'),
        front: k.size('at the front end'),
      }),
    },
  ]);

const wingField = (k: Kit) =>
  checked(
    section('a widening of the sump beyond its wall', {
      name: optional(nameField('right wing')),
      side: choice('side of the pan', ['left', 'right']),
      rear: k.length('x of its rear end'),
      front: k.length('x of its front end'),
      top_down: endToEnd(k, 'depth of its top where it leaves the wall'),
      top_fall: optional(k.angle('how far its top falls outward; flat when left out')),
      beyond_wall: endToEnd(k, 'how far it reaches beyond the wall'),
    }),
    ({ rear, front }, report) => {
      if (rear < front) return;
      report(
        {
          code: 'shape-wing',
          says: `is ${front} mm; it must be more than rear, ${rear} mm`,
          value: front,
          limit: rear,
          unit: 'mm',
        },
        ['front'],
      );
    },
  );

const wedgeField = (k: Kit) =>
  checked(
    section('a three-sided bar cut out of the pan', {
      triangle: tuple('corners across the bar: [x, z] along y, [y, z] along x, [x, y] along z', [
        k.point2('corner'),
        k.point2('corner'),
        k.point2('corner'),
      ]),
      along: choice('axis the bar runs along', ['x', 'y', 'z']),
      from: k.length('where it begins on that axis'),
      to: k.length('where it ends on that axis'),
    }),
    ({ triangle, from, to }, report) => {
      if (signedDoubleArea(triangle) === 0)
        report({ code: 'shape-notch', says: 'has no area: its corners are in line' }, ['triangle']);
      if (from >= to)
        report(
          {
            code: 'shape-notch',
            says: `is ${to} mm; it must be more than from, ${from} mm`,
            value: to,
            limit: from,
            unit: 'mm',
          },
          ['to'],
        );
    },
  );

const notchField = (k: Kit) =>
  checked(
    section('a cut-out for clearance', {
      name: nameField('drag link notch'),
      box: optional(corners(k)),
      wedge: optional(wedgeField(k)),
    }),
    ({ box, wedge }, report) => oneOf({ box, wedge }, report),
  );

export const panField = (k: Kit) =>
  checked(
    section('the pan, by its inside faces', {
      sheet: optional(
        section('sheet of belly, sides and wings', {
          material: optional(choice('material', materialNames), assumedText('sheet material')),
          thickness: optional(
            k.length('thickness', { from: '0.5 mm', to: '12 mm' }),
            'by material: 3 mm aluminium, 1.5 mm steel',
          ),
          bend_radius: optional(
            k.size('inside bend radius', '100 mm'),
            'the smallest for material and thickness, to the next 0.5 mm',
          ),
        }),
      ),
      floor_inside: floorField(k),
      width_inside: optional(k.size('inside width, the same all along', '3000 mm')),
      left: optional(halfWidthField(k, 'left')),
      right: optional(halfWidthField(k, 'right')),
      wings: optional(named('widenings of the sump', wingField(k), 20)),
      notches: optional(named('cut-outs for clearance', notchField(k), 20)),
      flange: optional(flangeField(k)),
      structural: optional(
        flag('whether the old pan tied the block to the gearbox'),
        assumedText('structural'),
      ),
      joints: optional(jointsField(k)),
      sump_from: optional(
        k.length('x that parts the shallow part from the sump; at the steepest floor piece when left out'),
      ),
    }),
    ({ width_inside, left, right, floor_inside, joints }, report) => {
      checkWidths({ width_inside, left, right }, report);
      (joints?.welded ?? []).forEach(([x, down], i) => {
        if (floor_inside.some((point) => point[0] === x && point[1] === down)) return;
        report(
          {
            code: 'shape-fold',
            says: 'is no point of floor_inside',
            expected: 'a floor point, [x, down] exactly as written there',
          },
          ['joints', 'welded', i],
        );
      });
    },
  );

type Widths = { width_inside: number | undefined; left: unknown; right: unknown };

const checkWidths = (
  { width_inside, left, right }: Widths,
  report: Parameters<Parameters<typeof checked>[1]>[1],
): void => {
  const expected = 'width_inside, or left and right';
  if (width_inside !== undefined && (left !== undefined || right !== undefined)) {
    report({ code: 'input-key', says: 'cannot stand beside left or right', expected }, ['width_inside']);
  }
  if (width_inside !== undefined || (left !== undefined && right !== undefined)) return;
  const key =
    left === undefined && right === undefined ? 'width_inside' : left === undefined ? 'left' : 'right';
  report({ code: 'input-missing', says: 'is missing', expected, found: 'nothing' }, [key]);
};

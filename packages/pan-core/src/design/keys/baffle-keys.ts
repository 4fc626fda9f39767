import { assumedText } from '../default.js';
import {
  checked,
  choice,
  type Field,
  list,
  optional,
  type Report,
  section,
  tuple,
  type ValueOf,
} from '../field/index.js';
import { nameField, oneOf } from './items.js';
import type { Kit } from './kit.js';
import { checkMounts, lidFields } from './lid-keys.js';

const doorField = (k: Kit) =>
  section('a one-way flap', {
    size: tuple('width and height of the opening', [k.size('width', '500 mm'), k.size('height', '500 mm')]),
    y: optional(k.length('y of its centre, in a wall across')),
    x: optional(k.length('x of its centre, in a wall along')),
    up: optional(
      k.length('height of its lower edge above the floor', { from: '0 mm', to: '500 mm' }),
      assumedText('door up'),
    ),
    lets_oil: choice('way it opens', ['rearward', 'forward', 'left', 'right']),
  });

const holeField = (k: Kit) =>
  checked(
    section('a hole', {
      at: k.point2('[x, y] in a lid; [y, down] or [x, down] in a wall'),
      diameter: optional(k.size('diameter', '500 mm')),
      size: optional(
        tuple('length and width of a slot', [k.size('length', '1000 mm'), k.size('width', '1000 mm')]),
      ),
    }),
    ({ diameter, size }, report) => oneOf({ diameter, size }, report),
  );

const spanField = (k: Kit): Field<readonly [number, number]> =>
  checked(
    tuple('where it begins and ends; from wall to wall when left out', [k.length('from'), k.length('to')]),
    ([a, b], report) => {
      if (a < b) return;
      report({
        code: 'shape-baffle',
        says: `runs from ${a} to ${b} mm; the first must be the lesser`,
        value: a,
        limit: b,
        unit: 'mm',
      });
    },
  );

const baffleSection = (k: Kit) =>
  section('a lid (with lid_down), a windage tray (with tray_down) or a wall (with across_at or along_at)', {
    name: nameField('lid'),
    lid_down: optional(k.size('lid: depth of its underside')),
    tray_down: optional(k.size('windage tray under the crank: depth of its underside')),
    rear: optional(k.length('lid or tray: x of its rear edge')),
    front: optional(k.length('lid or tray: x of its front edge')),
    across_at: optional(k.length('wall across the pan: its x')),
    along_at: optional(k.length('wall along the pan: its y')),
    span: optional(spanField(k)),
    top_down: optional(k.size('wall: depth of its top edge; up to the lid or the step when left out')),
    weep: optional(k.length('wall: gap at its foot', { from: '0 mm', to: '100 mm' }), assumedText('weep')),
    doors: optional(list('wall: one-way flaps', doorField(k), { most: 20 })),
    holes: optional(list('holes', holeField(k), { most: 200 })),
    ...lidFields(k),
    fixed: optional(choice('how it is held', ['bolted', 'welded']), assumedText('baffle fixing')),
    thickness: optional(
      k.length('thickness', { from: '0.5 mm', to: '12 mm' }),
      assumedText('baffle thickness'),
    ),
  });

export type BaffleKeys = ValueOf<ReturnType<typeof baffleSection>>;

const LID_ONLY = ['rear', 'front', 'slots', 'tabs', 'louvres', 'studs'] as const;
const TRAY_ONLY = ['louvres', 'studs'] as const;
const WALL_ONLY = ['top_down', 'weep', 'doors'] as const;

const checkBaffle = (baffle: BaffleKeys, report: Report): void => {
  const { lid_down, tray_down, across_at, along_at } = baffle;
  const kinds = { lid_down, tray_down, across_at, along_at };
  oneOf(kinds, report);
  if (Object.values(kinds).filter((value) => value !== undefined).length !== 1) return;
  const isTray = tray_down !== undefined;
  const isLid = lid_down !== undefined || isTray;
  const is = isTray ? 'windage tray' : isLid ? 'lid' : 'wall';
  const strange: readonly (readonly [readonly (keyof BaffleKeys)[], string])[] = [
    [isLid ? WALL_ONLY : LID_ONLY, isLid ? 'wall' : 'lid'],
    [is === 'lid' ? TRAY_ONLY : [], 'windage tray'],
  ];
  for (const [keys, owner] of strange) {
    for (const key of keys) {
      if (baffle[key] === undefined) continue;
      report({ code: 'input-key', says: `belongs to a ${owner}, and this is a ${is}` }, [key]);
    }
  }
  if (isLid) checkLid(baffle, report);
  if (isLid) checkMounts(baffle, report);
  const doors = isLid ? [] : (baffle.doors ?? []);
  for (const [i, door] of doors.entries()) checkDoor(door, across_at !== undefined, i, report);
};

const checkLid = ({ rear, front }: BaffleKeys, report: Report): void => {
  for (const [key, value] of Object.entries({ rear, front })) {
    if (value !== undefined) continue;
    report(
      {
        code: 'input-missing',
        says: 'is missing',
        expected: 'x of that edge of the lid, such as 110 mm',
        found: 'nothing',
      },
      [key],
    );
  }
  if (rear === undefined || front === undefined || rear < front) return;
  report(
    {
      code: 'shape-baffle',
      says: `is ${front} mm; it must be more than rear, ${rear} mm`,
      value: front,
      limit: rear,
      unit: 'mm',
    },
    ['front'],
  );
};

const checkDoor = (
  door: NonNullable<BaffleKeys['doors']>[number],
  across: boolean,
  i: number,
  report: Report,
): void => {
  const [mine, other] = across ? (['y', 'x'] as const) : (['x', 'y'] as const);
  const wall = across ? 'a wall across' : 'a wall along';
  if (door[mine] === undefined && door[other] === undefined) {
    report(
      {
        code: 'input-missing',
        says: `is missing; a door in ${wall} has it`,
        expected: `${mine} of its centre`,
        found: 'nothing',
      },
      ['doors', i, mine],
    );
  }
  if (door[other] !== undefined) {
    report(
      {
        code: 'input-key',
        says: `cannot be given for a door in ${wall}`,
        expected: mine,
        advice: `Use ${mine}.`,
      },
      ['doors', i, other],
    );
  }
  const ways = across ? ['rearward', 'forward'] : ['left', 'right'];
  if (!ways.includes(door.lets_oil)) {
    report(
      {
        code: 'shape-baffle',
        says: `is ${door.lets_oil}; a door in ${wall} opens ${ways.join(' or ')}`,
        expected: ways.join(' or '),
        found: door.lets_oil,
      },
      ['doors', i, 'lets_oil'],
    );
  }
};

export const baffleField = (k: Kit): Field<BaffleKeys> => checked(baffleSection(k), checkBaffle);

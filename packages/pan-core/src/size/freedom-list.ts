import type { Baffle, Design, Point2, Wing } from '../design/index.js';
import type { Edit, KeyPath } from './edit.js';
import { valueAt } from './edit.js';
import type { FreedomKind } from './freedom.js';

/** A value that may be set free: its name, what it is now, and what follows in the file when it changes. */
export interface Choosable {
  readonly name: string;
  readonly kind: FreedomKind;
  readonly now: number;
  /** What to write in the file for a value in mm or mm³. */
  readonly edits: (value: number) => readonly Edit[];
}

/** Spells a length or a volume as the file does: bare in its own unit of length, or in litres. */
interface Spelling {
  readonly length: (mm: number) => number;
  readonly volume: (mm3: number) => string;
}

const spellingOf = (raw: unknown): Spelling => ({
  length: (mm) => (valueAt(raw, ['units']) === 'in' ? tidy(mm / 25.4) : tidy(mm)),
  volume: (mm3) => `${tidy(mm3 / 1e6)} L`,
});

/** Without the digits that only binary fractions have. */
const tidy = (value: number): number => Number(value.toFixed(4));

/** Every value of a design that `pan size` may choose, under the name a builder gives it. */
export const choosable = (raw: unknown, design: Design): readonly Choosable[] => {
  const spell = spellingOf(raw);
  const one = (name: string, path: KeyPath, now: number): Choosable => ({
    name,
    kind: 'length',
    now,
    edits: (value) => [{ path, value: spell.length(value) }],
  });
  return [
    fillOf(design, spell),
    ...floorOf(design, spell),
    widthOf(raw, design, spell),
    ...design.pan.wings.flatMap((wing, i) => wingOf(raw, wing, i, one, spell)),
    ...design.baffles.flatMap((baffle, i) => baffleOf(baffle, i, one)),
    ...mouthOf(design, one, spell),
  ];
};

type One = (name: string, path: KeyPath, now: number) => Choosable;

const fillOf = ({ oil }: Design, spell: Spelling): Choosable => ({
  name: 'fill',
  kind: 'volume',
  now: oil.fill,
  edits: (value) => [{ path: ['oil', 'fill'], value: spell.volume(value) }],
});

/** Index of the floor point at the top of the steepest piece, which parts the shallow from the sump. */
export const stepIndex = (floor: readonly Point2[]): number => {
  let [best, steepest] = [0, Number.NEGATIVE_INFINITY];
  for (let i = 0; i + 1 < floor.length; i++) {
    const [a, b] = [floor[i] as Point2, floor[i + 1] as Point2];
    const slope = Math.atan2(b[1] - a[1], a[0] - b[0]);
    if (slope > steepest) [best, steepest] = [i, slope];
  }
  return best;
};

const floorOf = ({ pan: { floor } }: Design, spell: Spelling): readonly Choosable[] => {
  const step = stepIndex(floor);
  const last = floor.length - 1;
  const shift = (name: string, indices: readonly number[], axis: 0 | 1, now: number): Choosable => ({
    name,
    kind: 'length',
    now,
    edits: (value) =>
      indices.map((i) => ({
        path: ['pan', 'floor_inside', i, axis],
        value: spell.length((floor[i] as Point2)[axis] + value - now),
      })),
  });
  const all = floor.map((_, i) => i);
  const sump = all.filter((i) => i > step);
  const shallow = all.filter((i) => i <= step);
  const deepest = Math.max(...sump.map((i) => (floor[i] as Point2)[1]));
  return [
    shift('sump depth', sump, 1, deepest),
    shift('shallow depth', shallow, 1, (floor[step] as Point2)[1]),
    ...(step > 0 || last > step + 1
      ? [
          shift(
            'step',
            all.filter((i) => i > 0 && i < last && (i === step || i === step + 1)),
            0,
            (floor[step] as Point2)[0],
          ),
        ]
      : []),
    shift('front end', [0], 0, (floor[0] as Point2)[0]),
    shift('rear end', [last], 0, (floor[last] as Point2)[0]),
  ];
};

const widthOf = (raw: unknown, { pan: { left, right } }: Design, spell: Spelling): Choosable => {
  const widest = (side: readonly Point2[]): number => Math.max(...side.map(([, half]) => half));
  const now = widest(left) + widest(right);
  const sides = ['left', 'right'] as const;
  return {
    name: 'width',
    kind: 'length',
    now,
    edits: (value) =>
      valueAt(raw, ['pan', 'width_inside']) === undefined
        ? sides.map((side) => ({
            path: ['pan', side],
            value: (side === 'left' ? left : right).map(([x, half]) => [
              spell.length(x),
              spell.length(half + (value - now) / 2),
            ]),
          }))
        : [{ path: ['pan', 'width_inside'], value: spell.length(value) }],
  };
};

const wingOf = (raw: unknown, wing: Wing, i: number, one: One, spell: Spelling): readonly Choosable[] => {
  const at: KeyPath = ['pan', 'wings', i];
  /** One length for both ends stays one; two ends move together. */
  const both = (name: string, key: string, ends: Wing['topDown']): Choosable => {
    const path = [...at, key];
    const given = valueAt(raw, path);
    const scalar = typeof given !== 'object' || given === null;
    return {
      name,
      kind: 'length',
      now: ends.rear,
      edits: (value) =>
        scalar
          ? [{ path, value: spell.length(value) }]
          : [
              { path: [...path, 'rear'], value: spell.length(value) },
              { path: [...path, 'front'], value: spell.length(ends.front + value - ends.rear) },
            ],
    };
  };
  return [
    both(`${wing.name} reach`, 'beyond_wall', wing.beyondWall),
    both(`${wing.name} top`, 'top_down', wing.topDown),
    one(`${wing.name} rear`, [...at, 'rear'], wing.rear),
    one(`${wing.name} front`, [...at, 'front'], wing.front),
  ];
};

const baffleOf = (baffle: Baffle, i: number, one: One): readonly Choosable[] => {
  const at: KeyPath = ['baffles', i];
  if (baffle.kind === 'lid') {
    return [
      one(`${baffle.name} depth`, [...at, 'lid_down'], baffle.down),
      one(`${baffle.name} rear`, [...at, 'rear'], baffle.rear),
      one(`${baffle.name} front`, [...at, 'front'], baffle.front),
    ];
  }
  return [
    one(`${baffle.name} place`, [...at, baffle.run === 'across' ? 'across_at' : 'along_at'], baffle.at),
    ...(baffle.topDown === null ? [] : [one(`${baffle.name} top`, [...at, 'top_down'], baffle.topDown)]),
  ];
};

/** The tube's lower end goes with the mouth. */
const mouthOf = ({ pickup }: Design, one: One, spell: Spelling): readonly Choosable[] => {
  const along = (name: string, axis: 0 | 1): Choosable => ({
    name,
    kind: 'length',
    now: pickup.at[axis],
    edits: (value) => [
      { path: ['pickup', 'at', axis], value: spell.length(value) },
      ...(pickup.route[0] === undefined
        ? []
        : [
            {
              path: ['pickup', 'route', 0, axis],
              value: spell.length(pickup.route[0][axis] + value - pickup.at[axis]),
            },
          ]),
    ],
  });
  return [along('mouth x', 0), along('mouth y', 1), one('mouth gap', ['pickup', 'gap'], pickup.gap)];
};

import { type Path, polylinePath, roundedPath } from 'pan-core/geometry/index.js';
import type { Vec2 } from 'pan-core/numeric/index.js';
import { finishPart } from 'pan-core/sheet/finish.js';
import type { Part } from 'pan-core/sheet/index.js';
import { type Dice, diceFrom } from './dice.js';

const arc = (from: Vec2, to: Vec2, centre: Vec2, sweep: number): Path[number] => ({
  kind: 'arc',
  from,
  to,
  centre,
  radius: Math.hypot(from[0] - centre[0], from[1] - centre[1]),
  sweep,
});

const line = (from: Vec2, to: Vec2): Path[number] => ({ kind: 'line', from, to });

const box = (x: number, y: number, w: number, h: number): Path =>
  polylinePath(
    [
      [x, y],
      [x + w, y],
      [x + w, y + h],
      [x, y + h],
    ],
    true,
  );

type Shape = readonly [outline: Path, openings: readonly Path[]];

/** Shapes that sheet parts have, w by h, with how much of their box they cover. */
const SHAPES: readonly ((w: number, h: number, dice: Dice) => Shape)[] = [
  (w, h) => [box(0, 0, w, h), []],
  (w, h, dice) => {
    const t = dice.between(0.2, 0.5) * Math.min(w, h);
    return [
      polylinePath(
        [
          [0, 0],
          [w, 0],
          [w, t],
          [t, t],
          [t, h],
          [0, h],
        ],
        true,
      ),
      [],
    ];
  },
  (w, h) => [
    polylinePath(
      [
        [0, 0],
        [w, 0],
        [0, h],
      ],
      true,
    ),
    [],
  ],
  (w, h, dice) => {
    const cut = dice.between(0.2, 0.45) * w;
    return [
      polylinePath(
        [
          [0, 0],
          [w, 0],
          [w - cut, h],
          [cut / 2, h],
        ],
        true,
      ),
      [],
    ];
  },
  (w, h, dice) => {
    const t = dice.between(0.12, 0.25) * Math.min(w, h);
    return [box(0, 0, w, h), [box(t, t, w - 2 * t, h - 2 * t)]];
  },
  (w, h, dice) => {
    const t = dice.between(0.15, 0.3) * Math.min(w, h);
    const points: Vec2[] = [
      [0, 0],
      [w, 0],
      [w, h],
      [w - t, h],
      [w - t, t],
      [t, t],
      [t, h],
      [0, h],
    ];
    return [polylinePath(points, true), []];
  },
  (w) => {
    const r = w / 2;
    return [[arc([w, r], [0, r], [r, r], Math.PI), arc([0, r], [w, r], [r, r], Math.PI)], []];
  },
  (w) => [[line([0, 0], [w, 0]), arc([w, 0], [0, w], [0, 0], Math.PI / 2), line([0, w], [0, 0])], []],
  (w, h, dice) => {
    const r = dice.between(4, 0.2 * Math.min(w, h));
    const points = (
      [
        [0, 0],
        [w, 0],
        [w, h / 2],
        [w / 2, h / 2],
        [w / 2, h],
        [0, h],
      ] as Vec2[]
    ).map((at) => ({ at, radius: r }));
    return [roundedPath(points), []];
  },
  (w, h, dice) => {
    const t = dice.between(0.15, 0.3) * Math.min(w, h);
    return [box(0, 0, w, h), [box(0.2 * w, 0.3 * h, t, t), box(0.6 * w, 0.5 * h, t, t)]];
  },
];

/** A part of this outline, 3 mm thick, its folds across the blank's x if asked. */
export const flatPart = (
  name: string,
  [outline, openings]: Shape,
  quantity: number,
  folded: boolean,
): Part => {
  const part = finishPart({
    name,
    what: name,
    quantity,
    material: 'mild steel',
    thickness: 3,
    drawnFace: 'either',
    outline,
    openings: openings.map((opening) =>
      [...opening].reverse().map((s) => ({ ...s, from: s.to, to: s.from })),
    ),
    holes: [],
    folds: [],
    marks: [],
    notes: [],
  });
  if (!folded) return part;
  const x = part.flat[0] / 2;
  const fold = {
    name: 'fold',
    from: [x, 0],
    to: [x, part.flat[1]],
    angle: 1,
    radius: 5,
    direction: 'up',
    allowance: 5,
  } as const;
  return { ...part, folds: [fold] };
};

/** Five to fourteen kinds of part, up to three of each, of a pan's sizes. */
export const partSet = (seed: number, shapes = SHAPES): readonly Part[] => {
  const dice = diceFrom(seed);
  return Array.from({ length: dice.stepped(5, 14, 1) }, (_, i) => {
    const shape = shapes[dice.stepped(0, shapes.length - 1, 1)]!;
    const [w, h] = [dice.between(40, 420), dice.between(40, 240)];
    const count = dice.happens(0.3) ? dice.stepped(2, 3, 1) : 1;
    return flatPart(`part ${i}`, shape(w, h, dice), count, dice.happens(0.2));
  });
};

/** Share of the parts' boxes that metal covers. */
export const boxShare = (parts: readonly Part[]): number => {
  const sum = (size: (part: Part) => number): number =>
    parts.reduce((s, part) => s + part.quantity * size(part), 0);
  return sum((part) => part.area) / sum((part) => part.flat[0] * part.flat[1]);
};

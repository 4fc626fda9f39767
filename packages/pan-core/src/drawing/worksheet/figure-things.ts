import type { Vec2 } from '../../numeric/index.js';
import type { PageItem } from '../page/page.js';
import { ball, box, centreLine, dimension, leader, note, poly, ring } from './figure.js';
import { sideView } from './figure-engine.js';
import type { NumberOf } from './figure-rail.js';

/** A box by two corners, and a rod by its ends. */
export const thingsFigure = (n: NumberOf, group: string): readonly PageItem[] => {
  const front: readonly Vec2[] = [
    [30, 24],
    [74, 24],
    [74, 52],
    [30, 52],
  ];
  const back = front.map(([x, y]): Vec2 => [x + 16, y + 11]);
  return [
    poly('faint', [back[0]!, back[1]!]),
    poly('faint', [back[0]!, back[3]!]),
    poly('faint', [front[0]!, back[0]!]),
    poly('cut', front, true),
    poly('cut', [front[3]!, back[3]!, back[2]!, front[2]!]),
    poly('cut', [back[2]!, back[1]!, front[1]!]),
    ...leader(n(`${group}[].box`), [18, 14], front[0]!),
    ...leader(n(`${group}[].box`), [100, 72], back[2]!),
    note([22.5, 13], 'corner nearest the rear, right and low'),
    note([104, 71], 'and the one opposite'),
    ...ball([52, 38], n(`${group}[].name`)),
    note([56, 37], 'its name'),
    // A rod.
    poly('cut', [
      [126, 28],
      [166, 52],
    ]),
    poly('cut', [
      [122, 34],
      [162, 58],
    ]),
    ring('cut', [124, 31], 3.6),
    ring('cut', [164, 55], 3.6),
    centreLine([118, 27.4], [170, 58.6]),
    ...leader(n(`${group}[].rod`), [112, 18], [124, 31]),
    ...leader(n(`${group}[].rod`), [178, 68], [164, 55]),
    note([116.5, 17], 'both ends, at its middle'),
    ...dimension(n(`${group}[].diameter`), [146.5, 36.5], [141.5, 49.5], [], 1.9),
  ];
};

export const rearFigure = (n: NumberOf): readonly PageItem[] => [
  ...sideView(92, 168, 34, 76),
  centreLine([30, 46], [178, 46]),
  box('cut', [82, 24], [7, 44]),
  poly('cut', [
    [92, 74],
    [84, 74],
    [54, 62],
    [54, 30],
    [84, 18],
    [92, 18],
  ]),
  ...[110, 130, 150].map((x) => box('thin', [x, 27], [1.6, 7])),
  ...ball([112, 60], n('plus_minus')),
  note([117, 59], '± of all on the engine'),
  ...dimension(
    n('studs'),
    [136, 27],
    [136, 34],
    [
      [
        [131, 27],
        [138, 27],
      ],
    ],
    -1,
  ),
  ...dimension(
    n('flywheel.diameter'),
    [74, 24],
    [74, 68],
    [
      [
        [82, 24],
        [72, 24],
      ],
      [
        [82, 68],
        [72, 68],
      ],
    ],
  ),
  ...dimension(
    n('bell_housing.diameter'),
    [44, 18],
    [44, 74],
    [
      [
        [84, 18],
        [42, 18],
      ],
      [
        [84, 74],
        [42, 74],
      ],
    ],
  ),
  ...dimension(
    n('flywheel.rear'),
    [82, 8],
    [92, 8],
    [
      [
        [82, 24],
        [82, 6],
      ],
      [
        [92, 34],
        [92, 2],
      ],
    ],
    -0.7,
  ),
  ...leader(n('flywheel.front'), [104, 8], [89, 24]),
  ...dimension(
    n('bell_housing.rear'),
    [54, 3],
    [92, 3],
    [
      [
        [54, 30],
        [54, 1],
      ],
    ],
    -0.3,
  ),
  ...leader(n('bell_housing.front'), [104, 80], [92, 74]),
  note([112, 12], 'rear face: x = 0'),
];

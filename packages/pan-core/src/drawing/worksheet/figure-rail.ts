import type { Vec2 } from '../../numeric/index.js';
import type { PageItem } from '../page/page.js';
import { ball, box, centreLine, dimension, leader, note, poly, ring, shade } from './figure.js';

/** The number on the sheet of a row, by the end of its key. */
export type NumberOf = (key: string) => number;

// The rail seen from above on the canvas, front to the right: rear face at REAR, centre line at MID.
const [REAR, FRONT, MID, HALF] = [34, 150, 42, 24];

const railPlan = (): readonly PageItem[] => [
  shade('pale', [
    [REAR, MID - HALF],
    [FRONT, MID - HALF],
    [FRONT, MID + HALF],
    [REAR, MID + HALF],
  ]),
  shade('paper', [
    [REAR + 6, MID - HALF + 6],
    [FRONT - 6, MID - HALF + 6],
    [FRONT - 6, MID + HALF - 6],
    [REAR + 6, MID + HALF - 6],
  ]),
  box('cut', [REAR, MID - HALF], [FRONT - REAR, 2 * HALF]),
  box('thin', [REAR + 6, MID - HALF + 6], [FRONT - REAR - 12, 2 * HALF - 12]),
  centreLine([REAR - 12, MID], [FRONT + 14, MID]),
  note([FRONT + 16, MID + 1.5], 'front'),
  note([REAR - 14, MID + 2], 'rear', 'right'),
];

export const railFigure = (n: NumberOf): readonly PageItem[] => [
  ...railPlan(),
  ...dimension(
    n('rail.length'),
    [REAR, 8],
    [FRONT, 8],
    [
      [
        [REAR, MID - HALF],
        [REAR, 6],
      ],
      [
        [FRONT, MID - HALF],
        [FRONT, 6],
      ],
    ],
  ),
  ...dimension(
    n('rail.width'),
    [FRONT + 10, MID - HALF],
    [FRONT + 10, MID + HALF],
    [
      [
        [FRONT, MID - HALF],
        [FRONT + 12, MID - HALF],
      ],
      [
        [FRONT, MID + HALF],
        [FRONT + 12, MID + HALF],
      ],
    ],
    0.25,
  ),
  ...leader(n('land'), [88, 75], [88, MID + HALF - 3]),
  note([92.5, 74], 'machined face'),
  // A port and a dowel off the centre line.
  ring('cut', [132, MID + 11], 4),
  ring('cut', [50, MID - HALF + 3], 1.4),
  ...leader(n('marks[].name'), [122, 76], [132, MID + 11]),
  note([126.5, 75], 'port'),
  ...dimension(n('marks[].at'), [REAR, MID + 11], [128, MID + 11], [], 0.6),
  ...leader(n('origin'), [14, 22], [REAR, MID]),
  // A rule along both sides of the scan.
  box('mark', [56, 29], [46, 3]),
  box('mark', [56, 32], [3, 18]),
  ...ball([96, 30.5], n('calibrate.x')),
  ...ball([57.5, 47], n('calibrate.y')),
  note([62, 34], 'rules on the scan'),
  ...ball([6, 74], n('seen_from')),
  note([10, 75], 'looking down'),
  note([10, 71], 'or up at it?'),
];

export const holesFigure = (n: NumberOf): readonly PageItem[] => {
  const xs = [42, 58, 74, 90, 106, 122, 142];
  const holes: readonly Vec2[] = [
    ...xs.flatMap((x): Vec2[] => [
      [x, MID - HALF + 3],
      [x, MID + HALF - 3],
    ]),
    [REAR + 3, MID - 10],
    [REAR + 3, MID + 10],
    [FRONT - 3, MID - 10],
    [FRONT - 3, MID + 10],
  ];
  return [
    ...railPlan(),
    ...holes.map((at) => ring('cut', at, 1.5)),
    ...dimension(
      n('sides.y'),
      [98, MID],
      [98, MID + HALF - 3],
      [
        [
          [90, MID + HALF - 3],
          [100, MID + HALF - 3],
        ],
      ],
    ),
    ...dimension(
      n('x_first'),
      [REAR, 12],
      [42, 12],
      [
        [
          [REAR, MID - HALF],
          [REAR, 4],
        ],
        [
          [42, MID - HALF],
          [42, 10],
        ],
      ],
      -0.9,
    ),
    ...dimension(
      n('x_last'),
      [REAR, 6],
      [142, 6],
      [
        [
          [142, MID - HALF],
          [142, 4],
        ],
      ],
    ),
    ...leader(n('rail_holes.size'), [64, 77], [74, MID + HALF - 3]),
    ...leader(n('sides.count'), [112, 77], [106, MID + HALF - 3]),
    note([116, 76], 'how many on this side?'),
    ...dimension(n('inset'), [FRONT - 3, MID - 16], [FRONT, MID - 16], [], 4),
    ...dimension(n('ends.y'), [FRONT - 3, MID], [FRONT - 3, MID + 10], [], 0.5),
    ...ball([50, MID - 8], n('plus_minus')),
    note([54, MID - 9], '± of one distance'),
    ...ball([50, MID + 9], n('numbered')),
    note([54, MID + 8], 'way round of the numbers'),
  ];
};

/** Numbered holes with some of the distances between them. */
export const distancesFigure = (n: NumberOf): readonly PageItem[] => {
  const holes: readonly Vec2[] = [
    [40, 20],
    [70, 20],
    [100, 20],
    [130, 20],
    [146, 42],
    [130, 64],
    [100, 64],
    [70, 64],
    [40, 64],
  ];
  const shown: readonly (readonly [number, number])[] = [
    [0, 1],
    [0, 8],
    [1, 8],
    [1, 7],
    [2, 6],
    [2, 5],
    [3, 4],
    [4, 6],
    [5, 8],
  ];
  return [
    ...railPlan(),
    ...shown.map(([a, b]) => poly('mark', [holes[a]!, holes[b]!])),
    ...holes.flatMap(([x, y], i) => [ring('cut', [x, y], 1.5), note([x + 2.2, y + 2], String(i + 1))]),
    ...dimension(
      n('placed'),
      [REAR, 8],
      [40, 8],
      [
        [
          [40, 20],
          [40, 6],
        ],
      ],
      -1,
    ),
    note([60, 6], 'holes 1 and 8 by x and y; the rest by the distances between them'),
    ...leader(n('distances'), [118, 77], [115, 53]),
    ...leader(n('rough'), [160, 60], [146, 42]),
  ];
};

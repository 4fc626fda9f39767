import type { Vec2 } from '../numeric/index.js';
import { arrow, ball, box, centreLine, dimension, leader, note, poly, ring, shade } from './figure.js';
import type { NumberOf } from './figure-rail.js';
import type { PageItem } from './page.js';

/** The engine from its right side on the canvas: front to the right, rear face at x, rail at y. */
export const sideView = (rear: number, front: number, rail: number, top: number): readonly PageItem[] => [
  shade('pale', [
    [rear, rail],
    [front, rail],
    [front, top - 10],
    [front - 6, top],
    [rear + 4, top],
    [rear, top - 8],
  ]),
  poly(
    'cut',
    [
      [rear, rail],
      [front, rail],
      [front, top - 10],
      [front - 6, top],
      [rear + 4, top],
      [rear, top - 8],
    ],
    true,
  ),
  // The pan under it.
  poly('fold', [
    [rear + 2, rail],
    [rear + 2, rail - 19],
    [rear + (front - rear) * 0.45, rail - 18],
    [rear + (front - rear) * 0.45, rail - 7],
    [front - 3, rail - 5],
    [front - 3, rail],
  ]),
];

export const startFigure = (n: NumberOf): readonly PageItem[] => {
  const [rear, front, rail, top] = [22, 92, 34, 74];
  return [
    ...sideView(rear, front, rail, top),
    centreLine([10, rail], [104, rail]),
    note([106, rail - 1], 'rail'),
    centreLine([rear, 8], [rear, 80]),
    note([rear - 1, 5], 'rear face', 'centre'),
    ...arrow([rear, rail], [rear + 24, rail]),
    note([rear + 20, rail + 1.6], 'x'),
    ...arrow([rear, rail], [rear, rail + 22]),
    note([rear + 1.6, rail + 19], 'z'),
    note([72, 5], 'front to the right'),
    // The same from below its front, in plan.
    box('cut', [124, 22], [58, 40]),
    centreLine([116, 42], [188, 42]),
    note([190, 44], 'crank’s centre line', 'right'),
    ...arrow([124, 42], [144, 42]),
    note([140, 43.6], 'x'),
    ...arrow([124, 42], [124, 58]),
    note([125.6, 55], 'y'),
    note([153, 66], 'from above: left of the car is up', 'centre'),
    ...ball([10, 78], n('title')),
    ...ball([118, 78], n('units')),
    note([123, 77], 'mm or in on the tape'),
  ];
};

export const crankFigure = (n: NumberOf): readonly PageItem[] => {
  // From the front, at one throw: rail at y = 30.
  const [cx, cy, rail] = [44, 46, 22];
  const pin: Vec2 = [cx + 9, cy - 5];
  const throws = [112, 124, 136, 148, 160];
  return [
    poly('cut', [
      [18, rail],
      [18, 70],
      [28, 78],
      [60, 78],
      [70, 70],
      [70, rail],
    ]),
    box('cut', [12, rail - 3], [10, 3]),
    box('cut', [66, rail - 3], [10, 3]),
    centreLine([6, cy], [80, cy]),
    ring('cut', [cx, cy], 5),
    ring('thin', [cx, cy], Math.hypot(9, 5)),
    ring('cut', pin, 4),
    ring('mark', pin, 9),
    ...dimension(
      n('centre_above_rail'),
      [84, rail - 3],
      [84, cy],
      [
        [
          [76, rail - 3],
          [86, rail - 3],
        ],
        [
          [80, cy],
          [86, cy],
        ],
      ],
    ),
    ...dimension(
      n('crankcase_top'),
      [6, rail - 3],
      [6, 78],
      [
        [
          [12, rail - 3],
          [4, rail - 3],
        ],
        [
          [28, 78],
          [4, 78],
        ],
      ],
    ),
    ...dimension(
      n('stroke'),
      [cx - Math.hypot(9, 5), 66],
      [cx + Math.hypot(9, 5), 66],
      [
        [
          [cx - Math.hypot(9, 5), cy],
          [cx - Math.hypot(9, 5), 68],
        ],
        [
          [cx + Math.hypot(9, 5), cy],
          [cx + Math.hypot(9, 5), 68],
        ],
      ],
    ),
    ...dimension(n('big_end_reach'), pin, [pin[0] + 6.4, pin[1] - 6.4], [], 2.4),
    note([44, 5], 'from the front, one throw', 'centre'),
    // From the side.
    box('cut', [100, 42], [72, 30]),
    box('cut', [100, 39], [72, 3]),
    centreLine([92, 56], [182, 56]),
    ...throws.map((x, i) => box('thin', [x - 3, i % 2 === 0 ? 56 : 47], [6, 9])),
    ...throws.map((x, i) =>
      poly('faint', [
        [x, 50],
        [x, 30 - (i % 1)],
      ]),
    ),
    ...dimension(
      n('throws'),
      [100, 26],
      [112, 26],
      [
        [
          [100, 39],
          [100, 16],
        ],
      ],
    ),
    ...arrow([118, 26], [124, 26]),
    ...arrow([130, 26], [136, 26]),
    ...dimension(n('throw_width'), [157, 70], [163, 70], [], 2.2),
    note([136, 5], 'from the right side; x to the middle of each pin', 'centre'),
    note([98, 19], 'rear face', 'right'),
  ];
};

export const mountedFigure = (n: NumberOf): readonly PageItem[] => {
  const turn = 0.09;
  const at = ([x, y]: Vec2): Vec2 => [
    24 + Math.cos(turn) * (x - 24) - Math.sin(turn) * (y - 30),
    30 + Math.sin(turn) * (x - 24) + Math.cos(turn) * (y - 30),
  ];
  const block: readonly Vec2[] = [
    [24, 30],
    [104, 30],
    [104, 58],
    [98, 66],
    [28, 66],
    [24, 60],
  ];
  return [
    shade('pale', block.map(at)),
    poly('cut', block.map(at), true),
    poly(
      'fold',
      (
        [
          [26, 30],
          [26, 14],
          [60, 15],
          [60, 25],
          [100, 26],
          [100, 30],
        ] as Vec2[]
      ).map(at),
    ),
    centreLine([14, 30], [122, 30]),
    centreLine(at([24, 30]), at([122, 30])),
    ...leader(n('nose_up'), [126, 34], [118, 34.2]),
    note([108, 25], 'level'),
    ...dimension(n('top_above_rail'), at([112, 30]), at([112, 66]), [[at([98, 66]), at([114, 66])]], 0.55),
    ring('cut', at([92, 34]), 2),
    ...leader(n('pump_inlet'), [70, 78], at([92, 34])),
    note([64, 5], 'from the right side, front to the right', 'centre'),
    // From behind.
    poly(
      'cut',
      [
        [146, 34],
        [176, 31],
        [179, 62],
        [149, 65],
      ] as Vec2[],
      true,
    ),
    centreLine([161, 26], [161, 72]),
    centreLine([160, 28], [164.5, 72]),
    ...leader(n('lean_left'), [176, 74], [163.6, 70]),
    note([161, 18], 'from behind', 'centre'),
  ];
};

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
  note([94, 14], 'rear face: x = 0'),
];

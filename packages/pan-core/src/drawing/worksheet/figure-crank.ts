import type { Vec2 } from '../../numeric/index.js';
import type { PageItem } from '../page/page.js';
import { arrow, box, centreLine, dimension, leader, note, poly, ring } from './figure.js';
import type { NumberOf } from './figure-rail.js';

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
    ...arrow(pin, [pin[0] + 6.4, pin[1] - 6.4]),
    ...leader(n('big_end_reach'), [62, 27], [pin[0] + 3.2, pin[1] - 3.2]),
    note([44, 5], 'from the front, one throw', 'centre'),
    // From the side.
    box('cut', [100, 42], [72, 30]),
    box('cut', [100, 39], [72, 3]),
    centreLine([92, 56], [182, 56]),
    ...throws.map((x, i) => box('thin', [x - 3, i % 2 === 0 ? 56 : 47], [6, 9])),
    ...throws.slice(0, 3).map((x, i) =>
      poly('faint', [
        [x, 46],
        [x, 28 - 7 * i],
      ]),
    ),
    poly('faint', [
      [100, 39],
      [100, 12],
    ]),
    ...throws
      .slice(0, 3)
      .flatMap((x, i) => dimension(n('throws'), [100, 30 - 7 * i], [x, 30 - 7 * i], [], i === 0 ? 1.7 : 0.5)),
    ...dimension(n('throw_width'), [157, 70], [163, 70], [], 2.2),
    note([136, 5], 'from the right side; x to the middle of each pin', 'centre'),
    note([98, 33], 'rear face', 'right'),
  ];
};

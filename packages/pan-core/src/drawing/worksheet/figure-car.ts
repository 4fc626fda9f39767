import type { PageItem } from '../page/page.js';
import { arrow, ball, box, centreLine, dimension, leader, note, poly, ring, shade } from './figure.js';
import { sideView } from './figure-engine.js';
import type { NumberOf } from './figure-rail.js';

const wheel = (x: number): readonly PageItem[] => [ring('cut', [x, 20], 12), ring('thin', [x, 20], 5)];

export const groundFigure = (n: NumberOf): readonly PageItem[] => [
  poly('frame', [
    [6, 8],
    [184, 8],
  ]),
  note([184, 3.5], 'level floor', 'right'),
  ...wheel(42),
  ...wheel(160),
  poly('thin', [
    [18, 24],
    [28, 24],
  ]),
  poly('thin', [
    [18, 24],
    [20, 46],
    [60, 50],
    [74, 74],
    [116, 74],
    [126, 50],
    [178, 44],
    [180, 26],
    [174, 24],
  ]),
  ...sideView(116, 166, 36, 58),
  centreLine([104, 36], [178, 36]),
  centreLine([116, 2], [116, 66]),
  ...dimension(n('chassis.ground'), [108, 8], [108, 36]),
  ...ball([98, 16], n('ground_plus_minus')),
  note([94, 15], '±', 'right'),
  ...ball([98, 28], n('chassis.axes')),
  ...dimension(
    n('front_axle'),
    [116, 68],
    [160, 68],
    [
      [
        [160, 20],
        [160, 70],
      ],
    ],
  ),
  ...dimension(
    n('rear_axle'),
    [42, 80],
    [116, 80],
    [
      [
        [42, 20],
        [42, 82],
      ],
      [
        [116, 66],
        [116, 82],
      ],
    ],
  ),
  ...arrow([182, 30], [182, 18]),
  ...ball([182, 14], n('bump_front')),
  ...arrow([182, 34], [182, 46]),
  ...ball([182, 50], n('droop_front')),
  ...arrow([10, 30], [10, 18]),
  ...ball([10, 14], n('bump_rear')),
  ...arrow([10, 34], [10, 46]),
  ...ball([10, 50], n('droop_rear')),
];

export const movesFigure = (n: NumberOf): readonly PageItem[] => [
  // From behind: rocking about the crank.
  box('cut', [26, 26], [34, 40]),
  poly(
    'mark',
    [
      [22, 27],
      [56, 23],
      [61, 63],
      [27, 67],
    ],
    true,
  ),
  ring('thin', [43, 38], 3),
  ...leader(n('rock'), [70, 74], [60.5, 60]),
  note([43, 10], 'from behind', 'centre'),
  ...sideView(88, 138, 34, 62),
  ...arrow([113, 62], [113, 72]),
  ...ball([113, 76], n('engine_moves.up')),
  ...arrow([128, 22], [128, 12]),
  ...ball([128, 8], n('engine_moves.down')),
  ...arrow([138, 46], [146, 46]),
  ...arrow([88, 46], [80, 46]),
  ...ball([150, 46], n('fore_aft')),
  note([100, 6], 'from the right side', 'centre'),
  // The body.
  poly(
    'cut',
    [
      [160, 30],
      [186, 34],
      [184, 50],
      [180, 58],
      [166, 56],
      [158, 46],
    ],
    true,
  ),
  ...ball([172, 64], n('roll_per_g')),
  note([172, 22], 'leans in a turn', 'centre'),
  ...ball([162, 10], n('dive_per_g')),
  note([166, 9], 'nose dives'),
];

export const obstaclesFigure = (n: NumberOf): readonly PageItem[] => [
  ...sideView(36, 120, 44, 72),
  centreLine([22, 44], [136, 44]),
  // A crossmember by two corners; a drag link by its ends, and where it goes.
  shade('pale', [
    [84, 14],
    [102, 14],
    [102, 32],
    [84, 32],
  ]),
  box('cut', [84, 14], [18, 18]),
  ...leader(n('obstacles[].box'), [72, 6], [84, 14]),
  ...leader(n('obstacles[].box'), [112, 38], [102, 32]),
  ...leader(n('obstacles[].name'), [93, 6], [93, 20]),
  note([97.5, 5], 'crossmember, from the side'),
  ...dimension(
    n('obstacles[].clear'),
    [66, 14],
    [66, 26],
    [
      [
        [84, 14],
        [64, 14],
      ],
    ],
  ),
  note([61, 19], 'room wanted', 'right'),
  poly('cut', [
    [146, 24],
    [180, 36],
  ]),
  poly('cut', [
    [144.6, 28],
    [178.6, 40],
  ]),
  ring('cut', [145.3, 26], 2.2),
  ring('cut', [179.3, 38], 2.2),
  poly('fold', [
    [142.6, 44],
    [176.6, 56],
  ]),
  poly('fold', [
    [141.2, 48],
    [175.2, 60],
  ]),
  ring('thin', [141.9, 46], 2.2),
  ring('thin', [175.9, 58], 2.2),
  ...leader(n('obstacles[].rod'), [136, 16], [145.3, 26]),
  ...leader(n('obstacles[].rod'), [186, 28], [179.3, 38]),
  ...dimension(n('obstacles[].diameter'), [163.5, 30], [161.5, 34], [], -2.4),
  ...leader(n('obstacles[].positions'), [144, 62], [141.9, 46]),
  note([149, 61], 'at full lock'),
  ...leader(n('obstacles[].positions'), [182, 68], [175.9, 58]),
  ...arrow([158, 37], [156, 47]),
  ...ball([164, 47], n('travel')),
  note([144, 10], 'drag link, seen slantwise'),
  ...ball([16, 10], n('obstacles[].plus_minus')),
  note([20, 9], 'how well you know it: ±'),
];

import { arcSegment, type Path } from '../../geometry/index.js';
import type { Vec2 } from '../../numeric/index.js';
import { type PageItem, stroke } from '../page/page.js';
import { ball, box, centreLine, dimension, leader, note, poly, ring } from './figure.js';
import type { NumberOf } from './figure-rail.js';

// Left: the rail from above, front to the right. Right: its front end, seen from ahead, the block above the rail.
const [REAR, FRONT, MID, HALF] = [16, 88, 44, 20];
const [RAIL, MIDDLE, CENTRE, RADIUS] = [44, 146, 56, 24];

/** Dowels of the rail in plan, and a cap's round at one end. */
export const endsFigure = (n: NumberOf): readonly PageItem[] => [...dowelPlan(n), ...roundEnd(n)];

const dowelPlan = (n: NumberOf): readonly PageItem[] => {
  const dowels: readonly Vec2[] = [
    [30, MID + HALF - 3],
    [76, MID - HALF + 3],
  ];
  return [
    box('cut', [REAR, MID - HALF], [FRONT - REAR, 2 * HALF]),
    box('thin', [REAR + 6, MID - HALF + 6], [FRONT - REAR - 12, 2 * HALF - 12]),
    centreLine([REAR - 8, MID], [FRONT + 8, MID]),
    note([FRONT + 1, MID + 2], 'front'),
    ...dowels.map((at) => ring('cut', at, 1.6)),
    ...dimension(
      n('dowels[].at'),
      [REAR, 12],
      [76, 12],
      [
        [
          [REAR, MID - HALF],
          [REAR, 10],
        ],
        [
          [76, MID - HALF + 3],
          [76, 10],
        ],
      ],
    ),
    ...dimension(
      n('dowels[].at'),
      [66, MID - HALF + 3],
      [66, MID],
      [
        [
          [64, MID - HALF + 3],
          [76, MID - HALF + 3],
        ],
      ],
    ),
    ...leader(n('dowels[].size'), [46, 76], dowels[0]!),
    note([50, 75], 'dowel that stands in the block'),
  ];
};

const roundEnd = (n: NumberOf): readonly PageItem[] => {
  const drop = RAIL - CENTRE;
  const half = Math.sqrt(RADIUS * RADIUS - drop * drop);
  const turn = 2 * Math.acos(-drop / RADIUS);
  const arc: Path = [arcSegment([MIDDLE, CENTRE], [MIDDLE - half, RAIL], [MIDDLE + half, RAIL], turn)];
  return [
    poly('cut', [
      [104, 78],
      [104, RAIL],
      [MIDDLE - half, RAIL],
    ]),
    stroke('cut', arc),
    poly('cut', [
      [MIDDLE + half, RAIL],
      [184, RAIL],
      [184, 78],
    ]),
    ring('thin', [MIDDLE, CENTRE], 9),
    centreLine([MIDDLE, 26], [MIDDLE, 80]),
    centreLine([128, CENTRE], [164, CENTRE]),
    note([105.5, RAIL + 2], 'block'),
    note([108, RAIL - 5], 'rail'),
    ...dimension(n('radius'), [MIDDLE, CENTRE], [MIDDLE - 17, CENTRE - 17], [], 0.62),
    ...dimension(
      n('centre_above_rail'),
      [178, RAIL],
      [178, CENTRE],
      [
        [
          [164, CENTRE],
          [180, CENTRE],
        ],
      ],
    ),
    ...leader(n('end_seals[].end'), [114, 20], [MIDDLE - 8, 33.5]),
    note([105, 13], 'hangs below the rail: front or rear?'),
    ...ball([MIDDLE + 12, 22], n('across')),
    note([MIDDLE + 16, 21], 'off the centre line?'),
  ];
};

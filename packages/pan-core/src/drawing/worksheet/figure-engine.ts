import type { Vec2 } from '../../numeric/index.js';
import type { PageItem } from '../page/page.js';
import { arrow, ball, box, centreLine, dimension, leader, note, poly, ring, shade } from './figure.js';
import type { NumberOf } from './figure-rail.js';

/** The engine from its right side on the canvas: front to the right, rear face at x, rail at y. */
export const sideView = (rear: number, front: number, rail: number, top: number): readonly PageItem[] => {
  const block: readonly Vec2[] = [
    [rear, rail],
    [front, rail],
    [front, top - 10],
    [front - 6, top],
    [rear + 4, top],
    [rear, top - 8],
  ];
  return [
    shade('pale', block),
    poly('cut', block, true),
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
};

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
    note([153, 37.5], 'crank’s centre line', 'centre'),
    ...arrow([124, 42], [144, 42]),
    note([140, 43.6], 'x'),
    ...arrow([124, 42], [124, 58]),
    note([125.6, 55], 'y'),
    note([153, 66], 'from above: left of the car is up', 'centre'),
    ...ball([10, 78], n('title')),
    note([15, 77], 'engine and car'),
    ...ball([118, 78], n('units')),
    note([123, 77], 'mm or in on the tape'),
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
    // The mountings: the gearbox's behind the block, the engine's beside it.
    poly(
      'fold',
      (
        [
          [24, 56],
          [4, 49],
          [4, 40],
          [24, 34],
        ] as Vec2[]
      ).map(at),
    ),
    ring('cut', at([10, 42]), 2),
    ...leader(n('gearbox'), [8, 60], at([10, 42])),
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
    ring('cut', [142, 46], 2),
    ...leader(n('left'), [134, 58], [142, 46]),
    ring('cut', [182, 43], 2),
    ...leader(n('right'), [183, 58], [182, 43]),
    note([161, 18], 'from behind', 'centre'),
  ];
};

import type { Vec2 } from '../../numeric/index.js';
import type { PageItem } from '../page/page.js';
import { arrow, ball, centreLine, leader, note, poly, shade } from './figure.js';
import { sideView } from './figure-engine.js';
import type { NumberOf } from './figure-rail.js';

const END: readonly Vec2[] = [
  [122, 16],
  [140, 16],
  [140, 22],
  [128, 22],
  [128, 38],
  [140, 38],
  [140, 44],
  [122, 44],
];
const FAR: Vec2 = [34, 20];
const far = ([x, y]: Vec2): Vec2 => [x + FAR[0], y + FAR[1]];

/** A bonnet as a plane, and a channel as the outline of its end carried along an axis. */
export const shapesFigure = (n: NumberOf): readonly PageItem[] => [
  ...sideView(20, 86, 30, 58),
  centreLine([12, 30], [98, 30]),
  poly('cut', [
    [14, 71],
    [94, 64],
  ]),
  centreLine([14, 71], [94, 71]),
  ...leader(n('plane.at'), [30, 78], [44, 68.4]),
  note([34.5, 77], 'a point on it'),
  ...arrow([66, 66.4], [65.2, 60]),
  ...leader(n('plane.facing'), [104, 56], [65.6, 62]),
  note([100, 50], 'its free side'),
  ...ball([100, 68], n('falls_forward')),
  note([104.5, 67], 'falls to the front'),
  ...ball([10, 5], n('obstacles[].name')),
  note([14.5, 4], 'bonnet, bulkhead, floor: flat and wide'),
  // The channel.
  ...END.slice(0, 1).map((at) => poly('faint', [at, far(at)])),
  ...[END[1]!, END[2]!, END[5]!, END[6]!, END[7]!].map((at) => poly('cut', [at, far(at)])),
  poly('cut', [far(END[7]!), far(END[6]!), far(END[5]!)]),
  poly('cut', [far(END[2]!), far(END[1]!)]),
  shade('pale', END),
  poly('cut', END, true),
  ...END.map(([x, y], i) => note([x + (x < 125 ? -2.6 : 1.2), y - (y < 30 ? 1.6 : -0.6)], String(i + 1))),
  ...leader(n('prism.profile'), [112, 30], [122, 30]),
  note([112, 4], 'corners in order round its end'),
  ...arrow([146, 12], [172, 27.3]),
  ...ball([143.4, 10.4], n('prism.from')),
  ...ball([175, 29], n('prism.to')),
  ...ball([164, 15], n('prism.along')),
  note([136, 76], 'a channel along an axis'),
];

/** A bay's surface with marked points, as scanned and on the car. */
export const scansFigure = (n: NumberOf): readonly PageItem[] => {
  const skin: readonly Vec2[] = [
    [0, 6],
    [14, 2],
    [30, 10],
    [52, 4],
    [58, 26],
    [40, 38],
    [16, 34],
    [4, 24],
  ];
  const middle: Vec2 = [28, 20];
  const turned = ([x, y]: Vec2): Vec2 => [14 + 0.94 * x - 0.34 * y + 8, 18 + 0.34 * x + 0.94 * y];
  const inCar = ([x, y]: Vec2): Vec2 => [118 + x, 26 + y];
  const net = (put: (at: Vec2) => Vec2): readonly PageItem[] => [
    ...skin.map((at) => poly('faint', [put(middle), put(at)])),
    poly('cut', skin.map(put), true),
  ];
  const marks: readonly Vec2[] = [skin[1]!, skin[4]!, skin[6]!];
  const cross = ([x, y]: Vec2): readonly PageItem[] => [
    poly('mark', [
      [x - 2, y],
      [x + 2, y],
    ]),
    poly('mark', [
      [x, y - 2],
      [x, y + 2],
    ]),
  ];
  return [
    ...net(turned),
    ...net(inCar),
    ...marks.flatMap((at) => [...cross(turned(at)), ...cross(inCar(at))]),
    ...leader(n('in_scan'), [60, 78], turned(marks[1]!)),
    ...leader(n('in_scan'), [10, 74], turned(marks[2]!)),
    ...leader(n('in_scan'), [46, 14], turned(marks[0]!)),
    ...leader(n('in_chassis'), [184, 62], inCar(marks[1]!)),
    ...leader(n('in_chassis'), [122, 74], inCar(marks[2]!)),
    ...leader(n('in_chassis'), [146, 14], inCar(marks[0]!)),
    note([66, 79], 'read off the scan'),
    note([127, 75], 'the same mark on the car'),
    ...arrow([8, 10], [22, 10]),
    ...arrow([8, 10], [8, 24]),
    note([24, 9], 'the scan’s own x'),
    ...ball([8, 4], n('placement.origin')),
    note([12.5, 3], 'its zero'),
    ...ball([76, 20], n('placement.turn')),
    note([80.5, 19], 'turned by'),
    ...arrow([82, 42], [110, 42]),
    ...ball([76, 30], n('obstacles[].scan')),
    ...ball([84, 30], n('obstacles[].unit')),
    note([88.5, 29], 'file; mm or in'),
    ...ball([170, 10], n('obstacles[].name')),
    note([166, 9], 'its name', 'right'),
  ];
};

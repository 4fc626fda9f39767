import type { Vec2 } from '../../numeric/index.js';
import type { PageItem } from '../page/page.js';
import { ball, box, centreLine, leader, note, poly, ring, shade } from './figure.js';
import { sideView } from './figure-engine.js';
import type { NumberOf } from './figure-rail.js';

export const oilFigure = (n: NumberOf): readonly PageItem[] => [
  // A jug.
  poly('cut', [
    [14, 66],
    [18, 26],
    [40, 26],
    [44, 66],
  ]),
  shade('pale', [
    [15, 56],
    [18, 26],
    [40, 26],
    [43, 56],
  ]),
  ...leader(n('oil.fill'), [29, 74], [29, 56]),
  note([33.5, 73], 'poured in'),
  box('cut', [56, 26], [16, 22]),
  ...leader(n('oil.filter'), [64, 58], [64, 44]),
  note([68.5, 57], 'new filter, full'),
  ...sideView(104, 176, 34, 70),
  shade('pale', [
    [106, 28],
    [136, 28],
    [136, 16],
    [106, 15],
  ]),
  ...leader(n('held_up'), [120, 79], [124, 60]),
  note([124.5, 78], 'running: up here'),
  ...leader(n('galleries'), [96, 58], [108, 48]),
  note([98, 65], 'stays after stopping', 'right'),
  ring('cut', [170, 40], 5),
  ...leader(n('oil.pump'), [182, 52], [170, 40]),
  ...ball([29, 12], n('oil.grade')),
  note([33.5, 11], 'grade on the can'),
];

export const dipstickFigure = (n: NumberOf): readonly PageItem[] => {
  const [from, to]: readonly [Vec2, Vec2] = [
    [96, 58],
    [62, 22],
  ];
  return [
    ...sideView(40, 150, 38, 78),
    poly('mark', [[110, 72.8], from, to]),
    ring('cut', from, 1.6),
    ...leader(n('enters'), [154, 62], from),
    note([158.5, 61], 'where it begins'),
    ...leader(n('toward'), [24, 10], to),
    note([28.5, 7], 'a point farther down the stick'),
    centreLine([28, 38], [164, 38]),
    note([166, 37], 'rail'),
  ];
};

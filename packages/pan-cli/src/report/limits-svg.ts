import type { LimitsReport } from 'pan-core';
import { caseLetter, plotScale } from '../terminal/limits-plot.js';
import { plain } from '../terminal/plain.js';
import { wrap } from '../terminal/wrap.js';
import { drawingMm, element, line, words } from './svg.js';

const SIZE = 160;
const CENTRE: readonly [number, number] = [SIZE / 2, 98];
const RADIUS = 62;
const FAINT = { stroke: '#b8b8b8', 'stroke-width': 0.2, fill: 'none' } as const;

/** The limits by direction as a drawing: plan view, nose up, drawn to the side the oil runs to. */
export const limitsSvg = (report: LimitsReport): string => {
  const scale = plotScale(report);
  const spot = (toward: number, g: number): readonly [number, number] => {
    const t = (toward * Math.PI) / 180;
    const r = (RADIUS * g) / scale;
    return [CENTRE[0] + r * Math.sin(t), CENTRE[1] - r * Math.cos(t)];
  };
  const height = CENTRE[1] + RADIUS + 22 + 5 * Math.max(1, report.cases.length) + 8;
  const title = `Limits: ${plain(report.title, 80)}`;
  return drawingMm(SIZE, height, title, [
    words([6, 9], title, { 'font-size': 4.4, 'font-weight': 'bold' }),
    ...wrap(subtitle(report), 88).map((text, i) => words([6, 15 + 4.2 * i], text)),
    words([6, 24], 'Plan view, nose up; each direction is drawn to the side the oil runs to.'),
    ...rings(scale),
    ...axes(),
    outline(report, 'held_g', spot, scale, { stroke: '#0b5cad', 'stroke-dasharray': '2 1.2' }),
    outline(report, 'settled_g', spot, scale, { stroke: '#b3441e' }),
    ...marks(report, spot),
    ...legend(report, CENTRE[1] + RADIUS + 16),
  ]);
};

const subtitle = ({ in_pan_L, worst }: LimitsReport): string => {
  const fill = `${in_pan_L.toFixed(2)} L in the pan.`;
  if (worst === null) return `${fill} Covered up to 3 g in every direction.`;
  return `${fill} Lowest: ${(worst.limit_g ?? 0).toFixed(2)} g ${worst.load}, ${plain(worst.binding, 60)}.`;
};

const rings = (scale: number): readonly string[] => {
  const out: string[] = [];
  for (let g = 0.5; g <= scale + 1e-9; g += 0.5) {
    const r = (RADIUS * g) / scale;
    out.push(element('circle', { cx: CENTRE[0], cy: CENTRE[1], r, ...FAINT }));
    out.push(
      words([CENTRE[0] + 1, CENTRE[1] - r + 3.4], `${g.toFixed(1)} g`, { fill: '#707070', 'font-size': 2.6 }),
    );
  }
  return out;
};

const axes = (): readonly string[] => {
  const [x, y] = CENTRE;
  const middle = { 'text-anchor': 'middle' } as const;
  return [
    line([x - RADIUS, y], [x + RADIUS, y], FAINT),
    line([x, y - RADIUS], [x, y + RADIUS], FAINT),
    words([x, y - RADIUS - 2.5], 'braking', middle),
    words([x, y + RADIUS + 5], 'accelerating', middle),
    words([x + RADIUS + 1.5, y + 1], 'left turn'),
    words([x - RADIUS - 1.5, y + 1], 'right turn', { 'text-anchor': 'end' }),
  ];
};

/** A limit past what is followed is drawn at the edge. */
const outline = (
  report: LimitsReport,
  key: 'held_g' | 'settled_g',
  spot: (toward: number, g: number) => readonly [number, number],
  scale: number,
  style: Readonly<Record<string, number | string>>,
): string => {
  const points = report.directions.map((d) => {
    const [x, y] = spot(d.toward_deg, Math.min(d[key] ?? scale, scale));
    return `${x.toFixed(2)},${y.toFixed(2)}`;
  });
  return element('polygon', { points: points.join(' '), fill: 'none', 'stroke-width': 0.6, ...style });
};

const marks = (
  report: LimitsReport,
  spot: (toward: number, g: number) => readonly [number, number],
): readonly string[] => [
  ...(report.worst === null
    ? []
    : [circle(spot(report.worst.toward_deg, report.worst.limit_g ?? 0), 1.4, '#000000')]),
  ...report.cases.flatMap((one, i) => {
    if (one.toward_deg === null) return [];
    const at = spot(one.toward_deg, one.asks_g);
    return [
      circle(at, 2.6, one.covered ? '#2c7a2c' : '#c01818'),
      words([at[0], at[1] + 1.1], caseLetter(i), {
        'text-anchor': 'middle',
        'font-weight': 'bold',
        fill: '#ffffff',
      }),
    ];
  }),
];

const circle = ([cx, cy]: readonly [number, number], r: number, fill: string): string =>
  element('circle', { cx, cy, r, fill });

const legend = (report: LimitsReport, y: number): readonly string[] => [
  line([6, y - 1], [16, y - 1], { stroke: '#0b5cad', 'stroke-width': 0.6, 'stroke-dasharray': '2 1.2' }),
  words([18, y], 'held: doors and weeps tight'),
  line([66, y - 1], [76, y - 1], { stroke: '#b3441e', 'stroke-width': 0.6 }),
  words([78, y], 'settled: doors and weeps run'),
  circle([128, y - 1], 1.4, '#000000'),
  words([131, y], 'lowest limit'),
  ...report.cases.map((one, i) => {
    const least =
      one.least_fill_L === null ? 'no fill carries it' : `least oil ${one.least_fill_L.toFixed(2)} L`;
    const word = one.covered ? 'covered' : 'BARED';
    return words([6, y + 6 + 5 * i], `${caseLetter(i)}  ${plain(one.name, 50)}: ${word}; ${least}`);
  }),
  words([6, y + 8 + 5 * report.cases.length], report.sayings[0] ?? '', { 'font-size': 2.6 }),
];

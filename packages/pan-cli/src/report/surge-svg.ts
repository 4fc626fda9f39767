import { type SurgeCase, type SurgeReport, tenTo } from 'pan-core';
import { plain } from '../terminal/plain.js';
import { drawingMm, element, line, words } from './svg.js';

const WIDTH = 190;
const PANEL = 62;
const LEFT = 16;
const RIGHT = 8;
const TOP = 20;
const PLOT = 40;
const SWUNG = '#0b5cad';
const STILL = '#b3441e';
const FAINT = { stroke: '#c8c8c8', 'stroke-width': 0.2 } as const;

/** Depth of oil over the mouth against time, a panel for each case. */
export const surgeSvg = (report: SurgeReport): string => {
  const title = `Oil over the mouth: ${plain(report.title, 80)}`;
  const height = TOP + PANEL * report.cases.length + 12;
  return drawingMm(WIDTH, height, title, [
    words([6, 9], title, { 'font-size': 4.4, 'font-weight': 'bold' }),
    words(
      [6, 15],
      `${report.in_pan_L.toFixed(2)} L in the pan, oil at ${report.viscosity_mm2_s.toFixed(1)} mm²/s.`,
    ),
    line([LEFT + 90, 14], [LEFT + 98, 14], { stroke: SWUNG, 'stroke-width': 0.6 }),
    words([LEFT + 100, 15], 'surfaces swing'),
    line([LEFT + 126, 14], [LEFT + 134, 14], {
      stroke: STILL,
      'stroke-width': 0.6,
      'stroke-dasharray': '2 1.2',
    }),
    words([LEFT + 136, 15], 'follow at once'),
    ...report.cases.flatMap((one, i) => panel(one, TOP + PANEL * i)),
    words([6, height - 5], report.not_modelled[0] ?? '', { 'font-size': 2.4 }),
  ]);
};

const panel = (one: SurgeCase, top: number): readonly string[] => {
  const { time_s, submergence_mm, still_submergence_mm } = one.series;
  const end = time_s[time_s.length - 1] ?? 0;
  const depths = [...submergence_mm, ...still_submergence_mm, 0];
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const v of depths) {
    if (v < low) low = v;
    if (v > high) high = v;
  }
  const step = roundStep((high - low) / 4);
  const [least, most] = [Math.floor(low / step) * step, Math.ceil(high / step) * step];
  const foot = top + 10 + PLOT;
  const x = (t: number): number => LEFT + ((WIDTH - LEFT - RIGHT) * t) / (end || 1);
  const y = (v: number): number => foot - (PLOT * (v - least)) / (most - least || 1);
  const curve = (values: readonly number[], style: Readonly<Record<string, number | string>>): string =>
    element('polyline', {
      points: thinned(time_s, values)
        .map(([t, v]) => `${x(t).toFixed(2)},${y(v).toFixed(2)}`)
        .join(' '),
      fill: 'none',
      'stroke-width': 0.5,
      ...style,
    });
  const bare = one.time_to_bare_s === null ? 'never bared' : `bared after ${one.time_to_bare_s.toFixed(2)} s`;
  return [
    words([6, top + 6], `${plain(one.name, 60)}: ${bare}`, { 'font-weight': 'bold', 'font-size': 3.4 }),
    ...ticks(least, most, step).flatMap((v) => [
      line([LEFT, y(v)], [WIDTH - RIGHT, y(v)], v === 0 ? { stroke: '#000000', 'stroke-width': 0.3 } : FAINT),
      words([LEFT - 1.5, y(v) + 1], `${v.toFixed(0)} mm`, { 'text-anchor': 'end', 'font-size': 2.6 }),
    ]),
    ...ticks(0, end, roundStep(end / 8)).flatMap((t) => [
      line([x(t), foot - PLOT], [x(t), foot], FAINT),
      words([x(t), foot + 4], `${Number(t.toFixed(2))} s`, { 'text-anchor': 'middle', 'font-size': 2.6 }),
    ]),
    line([x(one.load_s), foot - PLOT], [x(one.load_s), foot], {
      stroke: '#707070',
      'stroke-width': 0.3,
      'stroke-dasharray': '1 1',
    }),
    curve(still_submergence_mm, { stroke: STILL, 'stroke-dasharray': '2 1.2' }),
    curve(submergence_mm, { stroke: SWUNG }),
  ];
};

/** 1, 2 or 5 times a power of ten, at least `size`. */
const roundStep = (size: number): number => {
  const ten = tenTo(Math.floor(Math.log10(Math.max(size, 1e-3))));
  return ten * ([1, 2, 5, 10].find((k) => k * ten >= size * (1 - 1e-9)) ?? 10);
};

const ticks = (from: number, to: number, step: number): readonly number[] => {
  const out: number[] = [];
  for (let k = Math.ceil(from / step - 1e-9); k * step <= to * (1 + 1e-9) + 1e-9; k++) out.push(k * step + 0);
  return out;
};

const MOST_POINTS = 600;

/** Least and most of each stretch, so that no peak is lost. */
const thinned = (
  time: readonly number[],
  values: readonly number[],
): readonly (readonly [number, number])[] => {
  const stretch = Math.ceil(values.length / MOST_POINTS);
  if (stretch <= 2) return values.map((v, i) => [time[i] as number, v]);
  const out: (readonly [number, number])[] = [];
  for (let i = 0; i < values.length; i += stretch) {
    const part = values.slice(i, i + stretch);
    const least = part.indexOf(Math.min(...part));
    const most = part.indexOf(Math.max(...part));
    for (const k of [...new Set([least, most])].sort((a, b) => a - b))
      out.push([time[i + k] as number, part[k] as number]);
  }
  return out;
};

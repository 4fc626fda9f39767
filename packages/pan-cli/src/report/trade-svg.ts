import { type TradeDesign, tenTo } from 'pan-core';
import { drawingMm, element, line, words } from './svg.js';

const [WIDTH, HEIGHT] = [170, 120];
const FRAME = { left: 22, right: 150, top: 24, bottom: 92 } as const;
const FAINT = { stroke: '#b8b8b8', 'stroke-width': 0.2 } as const;

/** Designs along the trade as a drawing: depth across, the g they stand upwards, metal as a figure beside each. */
export const tradeSvg = (designs: readonly TradeDesign[]): string => {
  const across = scaleOver(
    designs.map(({ depth_mm }) => depth_mm),
    FRAME.left,
    FRAME.right,
  );
  const up = scaleOver(
    designs.map(({ g_factor }) => g_factor),
    FRAME.bottom,
    FRAME.top,
  );
  return drawingMm(WIDTH, HEIGHT, 'Depth against g against metal', [
    words([6, 9], 'Depth against g against metal', { 'font-size': 4.4, 'font-weight': 'bold' }),
    words([6, 15], 'Each point is a design that passes; still-oil geometry, not proof.'),
    line([FRAME.left, FRAME.bottom], [FRAME.right, FRAME.bottom], { stroke: '#202020', 'stroke-width': 0.3 }),
    line([FRAME.left, FRAME.bottom], [FRAME.left, FRAME.top], { stroke: '#202020', 'stroke-width': 0.3 }),
    words([FRAME.right, FRAME.bottom + 10], 'deepest floor inside, mm', { 'text-anchor': 'end' }),
    words([6, FRAME.top - 3], 'times the g of the cases'),
    ...across.ticks.flatMap((value) => [
      line([across.at(value), FRAME.bottom], [across.at(value), FRAME.top], FAINT),
      words([across.at(value), FRAME.bottom + 5], `${value}`, { 'text-anchor': 'middle' }),
    ]),
    ...up.ticks.flatMap((value) => [
      line([FRAME.left, up.at(value)], [FRAME.right, up.at(value)], FAINT),
      words([FRAME.left - 2, up.at(value) + 1], value.toFixed(2), { 'text-anchor': 'end' }),
    ]),
    ...designs.flatMap((one, i) => {
      const [x, y] = [across.at(one.depth_mm), up.at(one.g_factor)];
      return [
        element('circle', { cx: x, cy: y, r: 1.4, fill: '#0b5cad' }),
        words([x + 2.4, y - 1.6], `${i + 1}`, { 'font-weight': 'bold' }),
      ];
    }),
    ...designs.map((one, i) =>
      words(
        [FRAME.left + 66 * (i % 2), FRAME.bottom + 16 + 5 * Math.floor(i / 2)],
        `${i + 1}  ${one.sought}: ${one.metal_kg.toFixed(2)} kg, ${one.fill_L.toFixed(1)} L`,
        { 'font-size': 2.7 },
      ),
    ),
  ]);
};

/** A straight scale with a little room at both ends, and round places along it. */
const scaleOver = (values: readonly number[], from: number, to: number) => {
  const [least, most] = [Math.min(...values), Math.max(...values)];
  const room = Math.max((most - least) * 0.12, Math.abs(most) * 0.01, 1e-9);
  const [low, high] = [least - room, most + room];
  const rough = (high - low) / 5;
  const power = tenTo(Math.floor(Math.log10(rough)));
  const step = power * ([1, 2, 5, 10].find((times) => times * power >= rough) ?? 10);
  const first = Math.ceil(low / step);
  const ticks = Array.from({ length: Math.floor(high / step) - first + 1 }, (_, k) =>
    Number(((first + k) * step).toPrecision(6)),
  );
  return { ticks, at: (value: number): number => from + ((value - low) / (high - low)) * (to - from) };
};

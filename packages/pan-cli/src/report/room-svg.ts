import type { FitReport, RoomReport } from 'pan-core';
import { plain } from '../terminal/plain.js';
import { shiftWords } from '../terminal/room-lines.js';
import { wrap } from '../terminal/wrap.js';
import { drawingMm, element, line, words } from './svg.js';

const WIDTH = 190;
const LEFT = 24;
const TOP = 34;
const PLOT = 120;
const FAINT = { stroke: '#9a9a9a', 'stroke-width': 0.2, fill: 'none' } as const;
/** Fills that stay apart in grey too. */
const FILLS = ['#d9a38f', '#8fb0d9', '#d9cf8f', '#b79fc9', '#9fc7b0', '#c9a9b8', '#a9a9a9', '#d9b98f'];

/** Room to move as a drawing: fore and aft across with the front to the right, height up. */
export const roomSvg = ({ room, title }: FitReport): string => {
  const heading = `Room to move: ${plain(title, 80)}`;
  if (room === null) {
    return drawingMm(WIDTH, 30, heading, [
      words([6, 9], heading, { 'font-size': 4.4, 'font-weight': 'bold' }),
      words([6, 18], 'Not known: see what pan fit asks for.'),
    ]);
  }
  const [x0, x1] = ends(room.map.forward_mm);
  const [z0, z1] = ends(room.map.up_mm);
  const scale = PLOT / Math.max(x1 - x0, z1 - z0, 1);
  const spot = (x: number, z: number): readonly [number, number] => [
    LEFT + (x - x0) * scale,
    TOP + (z1 - z) * scale,
  ];
  const foot = TOP + (z1 - z0) * scale;
  const legend = shutBy(room);
  const height = Math.max(foot + 22, TOP + 8 * legend.length + 40);
  return drawingMm(WIDTH, height, heading, [
    words([6, 9], heading, { 'font-size': 4.4, 'font-weight': 'bold' }),
    ...wrap(summary(room), 105).map((text, i) => words([6, 15 + 4.2 * i], text)),
    ...cells(room, spot, scale),
    ...axes(room, spot, foot),
    ...marks(room, spot),
    ...key(room, legend, LEFT + (x1 - x0) * scale + 8),
    words(
      [6, height - 4],
      'Clear: everything at its worst over the engine’s movement. Never work under an engine held only by a hoist.',
      { 'font-size': 2.6 },
    ),
  ]);
};

/** Least and most of a row of places. */
const ends = (list: readonly number[]): readonly [number, number] => [Math.min(...list), Math.max(...list)];

const mm = (value: number): string => `${value.toFixed(Math.abs(value) < 9.95 ? 1 : 0)} mm`;

const summary = ({ clear, nearest, lowest }: RoomReport): string => {
  const where = (forward_mm: number, up_mm: number): string => shiftWords({ forward_mm, up_mm }, mm);
  const now = clear
    ? 'Everything clears where the engine is.'
    : nearest === null
      ? 'No place in this range clears everything.'
      : `Not where it is; nearest clear place: ${where(nearest.forward_mm, nearest.up_mm)}.`;
  return lowest === null ? now : `${now} Lowest engine: ${where(lowest.forward_mm, lowest.up_mm)}.`;
};

/** Names that shut a place on the map, in order of first use. */
const shutBy = ({ map }: RoomReport): readonly number[] => [
  ...new Set(
    map.spare_mm.flatMap((row, j) => row.flatMap((s, i) => (s < 0 ? [map.binds[j]?.[i] ?? 0] : []))),
  ),
];

const fillOf = (legend: readonly number[], binds: number): string =>
  FILLS[legend.indexOf(binds) % FILLS.length] ?? '#a9a9a9';

/** Runs of cells alike in a row are one rectangle. */
const cells = (
  room: RoomReport,
  spot: (x: number, z: number) => readonly [number, number],
  scale: number,
): readonly string[] => {
  const { map } = room;
  const legend = shutBy(room);
  const [dx, dz] = [
    (map.forward_mm[1] ?? 0) - (map.forward_mm[0] ?? 0),
    (map.up_mm[0] ?? 0) - (map.up_mm[1] ?? 0),
  ];
  const [x0, x1] = ends(room.map.forward_mm);
  const [z0, z1] = ends(room.map.up_mm);
  return map.spare_mm.flatMap((row, j) => {
    const fills = row.map((s, i) => (s < 0 ? fillOf(legend, map.binds[j]?.[i] ?? 0) : ''));
    const out: string[] = [];
    for (let i = 0; i < fills.length; ) {
      let end = i;
      while (end + 1 < fills.length && fills[end + 1] === fills[i]) end++;
      const at = map.up_mm[j] ?? 0;
      const [left, right] = [
        Math.max(x0, (map.forward_mm[i] ?? 0) - dx / 2),
        Math.min(x1, (map.forward_mm[end] ?? 0) + dx / 2),
      ];
      const [low, high] = [Math.max(z0, at - dz / 2), Math.min(z1, at + dz / 2)];
      const [x, y] = spot(left, high);
      if (fills[i] !== '') {
        out.push(
          element('rect', {
            x,
            y,
            width: (right - left) * scale,
            height: (high - low) * scale,
            fill: fills[i] ?? '',
            'shape-rendering': 'crispEdges',
          }),
        );
      }
      i = end + 1;
    }
    return out;
  });
};

/** Round figures between two ends, five or so. */
const ticks = (a: number, b: number): readonly number[] => {
  const step = [5, 10, 20, 25, 50, 100, 200].find((s) => (b - a) / s <= 6) ?? 200;
  const first = Math.ceil(a / step);
  return Array.from({ length: Math.floor(b / step) - first + 1 }, (_, i) => (first + i) * step);
};

const axes = (
  room: RoomReport,
  spot: (x: number, z: number) => readonly [number, number],
  foot: number,
): readonly string[] => {
  const [x0, x1] = ends(room.map.forward_mm);
  const [z0, z1] = ends(room.map.up_mm);
  const [left, top] = spot(x0, z1);
  const [right] = spot(x1, z0);
  return [
    element('rect', { x: left, y: top, width: right - left, height: foot - top, ...FAINT }),
    line(spot(x0, 0), spot(x1, 0), { ...FAINT, 'stroke-dasharray': '1 1' }),
    line(spot(0, z0), spot(0, z1), { ...FAINT, 'stroke-dasharray': '1 1' }),
    ...ticks(x0, x1).map((x) =>
      words([spot(x, 0)[0], foot + 4.5], `${x > 0 ? '+' : ''}${x}`, { 'text-anchor': 'middle' }),
    ),
    ...ticks(z0, z1).map((z) =>
      words([left - 1.5, spot(0, z)[1] + 1], `${z > 0 ? '+' : ''}${z}`, { 'text-anchor': 'end' }),
    ),
    words([(left + right) / 2, foot + 10], 'fore and aft, mm; front to the right', {
      'text-anchor': 'middle',
    }),
    element(
      'g',
      { transform: `translate(${left - 14} ${(top + foot) / 2}) rotate(-90)` },
      words([0, 0], 'height, mm', { 'text-anchor': 'middle' }),
    ),
  ];
};

const marks = (
  { lowest }: RoomReport,
  spot: (x: number, z: number) => readonly [number, number],
): readonly string[] => {
  const dot = ([cx, cy]: readonly [number, number], fill: string): string =>
    element('circle', { cx, cy, r: 1.5, fill, stroke: '#ffffff', 'stroke-width': 0.4 });
  return [
    ...(lowest === null ? [] : [dot(spot(lowest.forward_mm, lowest.up_mm), '#0b5cad')]),
    dot(spot(0, 0), '#000000'),
  ];
};

const key = (room: RoomReport, legend: readonly number[], x: number): readonly string[] => {
  const dot = (y: number, fill: string): string => element('circle', { cx: x + 2, cy: y - 1, r: 1.5, fill });
  return [
    dot(TOP + 4, '#000000'),
    words([x + 6, TOP + 4], 'as designed'),
    ...(room.lowest === null ? [] : [dot(TOP + 10, '#0b5cad'), words([x + 6, TOP + 10], 'lowest engine')]),
    words([x, TOP + 18], 'white: clear; shut by'),
    ...legend.flatMap((binds, i) => [
      element('rect', { x, y: TOP + 21 + 6 * i, width: 4, height: 4, fill: fillOf(legend, binds) }),
      words([x + 6, TOP + 24 + 6 * i], plain(room.map.names[binds] ?? '', 24)),
    ]),
  ];
};

import { circlePath, type Path, polylinePath } from '../../geometry/index.js';
import type { Vec2 } from '../../numeric/index.js';
import { line, type PageItem, type Pen, stroke, words } from '../page/page.js';

/** A drawing on a canvas of this size, mm, origin in its lower left corner. */
export const CANVAS: Vec2 = [190, 84];

const BALL = 2.7;
const ARROW = 2.2;

export const poly = (pen: Pen, points: readonly Vec2[], closed = false): PageItem =>
  stroke(pen, polylinePath(points, closed));

export const ring = (pen: Pen, at: Vec2, radius: number): PageItem => stroke(pen, circlePath(at, radius));

export const box = (pen: Pen, [x, y]: Vec2, [w, h]: Vec2): PageItem =>
  poly(
    pen,
    [
      [x, y],
      [x + w, y],
      [x + w, y + h],
      [x, y + h],
    ],
    true,
  );

export const shade = (tone: 'pale' | 'grey' | 'ink' | 'paper', points: readonly Vec2[]): PageItem => ({
  kind: 'fill',
  path: polylinePath(points, true),
  shade: tone,
});

export const note = (at: Vec2, text: string, align: 'left' | 'centre' | 'right' = 'left'): PageItem =>
  words(at, 2.9, text, { align });

/** The number of a row, in a ring. */
export const ball = (at: Vec2, number: number): readonly PageItem[] => [
  { kind: 'fill', path: circlePath(at, BALL), shade: 'paper' },
  ring('frame', at, BALL),
  words([at[0], at[1] - 1.15], 3.3, String(number), { align: 'centre', bold: true }),
];

const arrowHead = (tip: Vec2, from: Vec2): PageItem => {
  const length = Math.hypot(tip[0] - from[0], tip[1] - from[1]) || 1;
  const [u, v] = [(tip[0] - from[0]) / length, (tip[1] - from[1]) / length];
  return shade('ink', [
    tip,
    [tip[0] - ARROW * u - 0.55 * v, tip[1] - ARROW * v + 0.55 * u],
    [tip[0] - ARROW * u + 0.55 * v, tip[1] - ARROW * v - 0.55 * u],
  ]);
};

/** A thin leader with a dot from a numbered ring to what it means. */
export const leader = (number: number, at: Vec2, to: Vec2): readonly PageItem[] => [
  line('thin', at, to),
  { kind: 'fill', path: circlePath(to, 0.6), shade: 'ink' },
  ...ball(at, number),
];

export const arrow = (from: Vec2, to: Vec2): readonly PageItem[] => [
  line('thin', from, to),
  arrowHead(to, from),
];

/** A dimension line between two points with its number in the middle, and help lines from what it measures. */
export const dimension = (
  number: number,
  a: Vec2,
  b: Vec2,
  helps: readonly (readonly [Vec2, Vec2])[] = [],
  place = 0.5,
): readonly PageItem[] => [
  ...helps.map(([p, q]) => line('faint', p, q)),
  line('thin', a, b),
  arrowHead(a, b),
  arrowHead(b, a),
  ...ball([a[0] + (b[0] - a[0]) * place, a[1] + (b[1] - a[1]) * place], number),
];

/** Long and short dashes along a centre line. */
export const centreLine = (a: Vec2, b: Vec2): PageItem =>
  stroke('crease', [{ kind: 'line', from: a, to: b }]);

export const moved = (items: readonly PageItem[], [dx, dy]: Vec2): readonly PageItem[] => {
  const shift = ([x, y]: Vec2): Vec2 => [x + dx, y + dy];
  const path = (of: Path): Path =>
    of.map((piece) =>
      piece.kind === 'line'
        ? { ...piece, from: shift(piece.from), to: shift(piece.to) }
        : { ...piece, from: shift(piece.from), to: shift(piece.to), centre: shift(piece.centre) },
    );
  return items.map((item): PageItem => {
    if (item.kind === 'words') return { ...item, at: shift(item.at) };
    if (item.kind === 'clip')
      return {
        ...item,
        box: { min: shift(item.box.min), max: shift(item.box.max) },
        items: moved(item.items, [dx, dy]),
      };
    return { ...item, path: path(item.path) };
  });
};

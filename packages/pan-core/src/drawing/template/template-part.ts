import { isClosed, movePath, type PathBox, pathBox } from '../../geometry/index.js';
import type { Vec2 } from '../../numeric/index.js';
import { oneLine } from '../one-line.js';
import { markLine } from '../page/mark-line.js';
import { LETTER_WIDTH, type PageItem, stroke, words } from '../page/page.js';
import { trimmed } from '../part-words.js';
import { cutPaths, type TemplateView } from './template-view.js';

/** A closed mark no wider than this is a place to punch, and too narrow for its words, mm. */
const PUNCHED = 12;

/** A view's lines and words moved by `shift`, words only where they can be read inside `box` (page axes). */
export const templateItems = (view: TemplateView, shift: Vec2, box: PathBox): readonly PageItem[] => {
  const move = { shift };
  const inBox = (p: Vec2): boolean =>
    p[0] > box.min[0] && p[0] < box.max[0] && p[1] > box.min[1] && p[1] < box.max[1];
  const items: PageItem[] = [];
  for (const mark of view.marks) {
    const path = movePath(move, mark.path);
    items.push(stroke('mark', path));
    const text = oneLine(mark.what, 60);
    const line = markLine(path);
    if (line === null || text === '') continue;
    if (isClosed(mark.path)) {
      const { min, max } = pathBox(path);
      const middle: Vec2 = [(min[0] + max[0]) / 2, (min[1] + max[1]) / 2];
      if (!inBox(middle)) continue;
      const across = max[0] - min[0];
      if (across > PUNCHED) items.push(words(middle, 2.8, text, { align: 'centre', room: across - 2 }));
      else
        items.push(
          ...centreCross(middle, across / 2),
          words([middle[0], max[1] + 2], 2.8, text, { align: 'centre' }),
        );
    } else items.push(...alongLine(...line, box, 2.8, text));
  }
  for (const fold of view.folds) {
    const [from, to] = [at(fold.from, shift), at(fold.to, shift)];
    items.push(stroke('crease', [{ kind: 'line', from, to }]));
    const way = fold.towardsYou ? 'towards you' : 'away from you';
    const text = `fold ${way} ${((fold.angle * 180) / Math.PI).toFixed(1)}°, inside R ${trimmed(fold.radius, 2)}`;
    items.push(...alongLine(from, to, box, 3, text));
  }
  for (const path of cutPaths(view)) items.push(stroke('cut', movePath(move, path)));
  for (const hole of view.holes) {
    const [x, y] = at(hole.at, shift);
    if (inBox([x, y])) items.push(...centreCross([x, y], hole.diameter / 2));
  }
  return items;
};

const at = (p: Vec2, shift: Vec2): Vec2 => [p[0] + shift[0], p[1] + shift[1]];

const centreCross = ([x, y]: Vec2, r: number): readonly PageItem[] => {
  const d = r + 1.5;
  return [
    stroke('thin', [{ kind: 'line', from: [x - d, y], to: [x + d, y] }]),
    stroke('thin', [{ kind: 'line', from: [x, y - d], to: [x, y + d] }]),
  ];
};

/** Words beside a line, in the middle of what the box shows of it; none where that is too short to read. */
export const alongLine = (
  from: Vec2,
  to: Vec2,
  box: PathBox,
  size: number,
  text: string,
): readonly PageItem[] => {
  const seen = clipLine(from, to, box);
  if (seen === null) return [];
  const [a, b] = seen;
  const room = Math.hypot(b[0] - a[0], b[1] - a[1]) - 3;
  if (room < 0.45 * size * LETTER_WIDTH * [...text].length) return [];
  const straight = Math.atan2(b[1] - a[1], b[0] - a[0]);
  const turned =
    straight > Math.PI / 2 + 1e-9 || straight <= -Math.PI / 2 + 1e-9 ? straight + Math.PI : straight;
  const off = 0.35 * size;
  const place: Vec2 = [
    (a[0] + b[0]) / 2 - Math.sin(turned) * off,
    (a[1] + b[1]) / 2 + Math.cos(turned) * off,
  ];
  return [words(place, size, text, { align: 'centre', turned, room })];
};

/** The part of a line inside a box, by its share from 0 to 1 on each side in turn; null when none is. */
const clipLine = (from: Vec2, to: Vec2, { min, max }: PathBox): readonly [Vec2, Vec2] | null => {
  let [low, high] = [0, 1];
  for (const k of [0, 1] as const) {
    const along = to[k] - from[k];
    if (Math.abs(along) < 1e-9) {
      if (from[k] <= min[k] || from[k] >= max[k]) return null;
      continue;
    }
    const [p, q] = [(min[k] - from[k]) / along, (max[k] - from[k]) / along];
    low = Math.max(low, Math.min(p, q));
    high = Math.min(high, Math.max(p, q));
  }
  if (low >= high) return null;
  const point = (t: number): Vec2 => [from[0] + t * (to[0] - from[0]), from[1] + t * (to[1] - from[1])];
  return [point(low), point(high)];
};

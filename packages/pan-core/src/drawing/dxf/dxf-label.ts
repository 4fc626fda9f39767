import { isClosed, pathBox } from '../../geometry/index.js';
import type { Vec2 } from '../../numeric/index.js';
import type { Mark } from '../../sheet/index.js';
import { oneLine } from '../one-line.js';
import { markLine } from '../page/mark-line.js';
import { type Entity, textEntity } from './dxf-entity.js';

/** Width of a character of the plain stroke font over its height, on the wide side. */
export const CHARACTER = 0.95;
/** Smaller than this nobody reads it, mm. */
const READABLE = 1.8;

/**
 * Words along a line, upright to read and no longer than it; fewer words or, at last, beside its upper end where it
 * is too short.
 *
 * @param height wished, mm
 * @param fewer said instead where the text would be too small to read
 */
export const labelAlong = (from: Vec2, to: Vec2, height: number, text: string, fewer = text): Entity => {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const fits = fitting(text, 0.9 * Math.hypot(dx, dy), height);
  if (fits < READABLE && fewer !== text) return labelAlong(from, to, height, fewer);
  if (fits < READABLE) {
    const [x, y] = from[1] > to[1] ? from : to;
    return textEntity('note', [x, y + READABLE], READABLE, text, 0, true);
  }
  const straight = Math.atan2(dy, dx);
  const turned = straight > Math.PI / 2 || straight <= -Math.PI / 2 ? straight + Math.PI : straight;
  const at: Vec2 = [
    (from[0] + to[0]) / 2 - Math.sin(turned) * 0.6 * fits,
    (from[1] + to[1]) / 2 + Math.cos(turned) * 0.6 * fits,
  ];
  return textEntity('note', at, fits, text, turned, true);
};

/** What a mark is for: along a line, in the middle of a closed shape, over one that is too small for it. */
export const markLabel = (mark: Mark, height: number): Entity => {
  const what = oneLine(mark.what, 60);
  const line = isClosed(mark.path) ? null : markLine(mark.path);
  if (line !== null) return labelAlong(...line, Math.max(READABLE, height), what);
  const { min, max } = pathBox(mark.path);
  const fits = fitting(what, 0.9 * (max[0] - min[0]), height);
  const size = Math.max(READABLE, fits);
  const foot = fits < READABLE ? max[1] + 0.6 * size : (min[1] + max[1] - size) / 2;
  return textEntity('note', [(min[0] + max[0]) / 2, foot], size, what, 0, true);
};

const fitting = (text: string, length: number, height: number): number =>
  Math.min(height, length / ([...text].length * CHARACTER));

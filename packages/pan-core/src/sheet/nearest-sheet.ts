import { type Path, pointInPath, polylinePath } from '../geometry/index.js';
import { add3, dot3, scale3, subtract3, type Vec2, type Vec3 } from '../numeric/index.js';
import type { Panel } from '../pan/index.js';
import { viewFromOil } from './leaf.js';

/** The nearest place of the pan’s inside face: how far, which way there, and what it belongs to. */
export interface NearestSheet {
  readonly distance: number;
  readonly way: Vec3;
  readonly panel: Panel;
}

const SHEET: readonly Panel['owner'][] = ['belly', 'side left', 'side right', 'wing', 'notch'];

/** From a point to the nearest sheet; null where no panel is sheet. */
export const nearestSheet = (panels: readonly Panel[], p: Vec3): NearestSheet | null => {
  const found = panels
    .filter(({ owner }) => SHEET.includes(owner))
    .map((panel): NearestSheet => {
      const way = subtract3(nearestOn(panel, p), p);
      return { distance: Math.hypot(...way), way, panel };
    });
  return found.length === 0 ? null : found.reduce((a, b) => (b.distance < a.distance ? b : a));
};

/** On the face itself where the point stands over it, else on one of its edges. */
const nearestOn = ({ normal, loops }: Panel, p: Vec3): Vec3 => {
  const origin = loops[0]![0]!;
  const { u, v } = viewFromOil(normal);
  const flat = (q: Vec3): Vec2 => {
    const r = subtract3(q, origin);
    return [dot3(r, u), dot3(r, v)];
  };
  const paths = loops.map((loop): Path => polylinePath(loop.map(flat), true));
  const at = flat(p);
  const within = paths.filter((path) => pointInPath(path, at) === 'inside').length % 2 === 1;
  if (within) return subtract3(p, scale3(normal, dot3(subtract3(p, origin), normal)));
  const places = loops.flatMap((loop) => loop.map((a, i) => onEdge(a, loop[(i + 1) % loop.length]!, p)));
  const away = (q: Vec3): number => Math.hypot(...subtract3(q, p));
  return places.reduce((a, b) => (away(b) < away(a) ? b : a));
};

const onEdge = (a: Vec3, b: Vec3, p: Vec3): Vec3 => {
  const along = subtract3(b, a);
  const t = dot3(subtract3(p, a), along) / (dot3(along, along) || 1);
  return add3(a, scale3(along, Math.max(0, Math.min(1, t))));
};

/** Below this a step is not worth telling, mm. */
const TOLD = 0.05;

/** A step in a builder’s words: "12.0 mm rearward and 3.5 mm up". */
export const stepWords = (way: Vec3): string =>
  (
    [
      ['forward', 'rearward'],
      ['left', 'right'],
      ['up', 'down'],
    ] as const
  )
    .flatMap(([more, less], i) => {
      const d = way[i]!;
      return Math.abs(d) < TOLD ? [] : [`${Math.abs(d).toFixed(1)} mm ${d > 0 ? more : less}`];
    })
    .join(' and ');

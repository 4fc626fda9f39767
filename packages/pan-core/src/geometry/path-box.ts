import type { Vec2 } from '../numeric/index.js';
import type { Path } from './path.js';
import { arcShare } from './path-point.js';

export interface PathBox {
  readonly min: Vec2;
  readonly max: Vec2;
}

/** The upright box around a path, exact: an arc reaches its quarter points where it passes them. */
export const pathBox = (path: Path): PathBox => {
  const points: Vec2[] = [];
  for (const s of path) {
    points.push(s.from, s.to);
    if (s.kind === 'line') continue;
    const [[x, y], r] = [s.centre, s.radius];
    const quarters: Vec2[] = [
      [x + r, y],
      [x, y + r],
      [x - r, y],
      [x, y - r],
    ];
    for (const q of quarters) {
      const t = arcShare(s, q);
      if (t > 0 && t < 1) points.push(q);
    }
  }
  const xs = points.map((p) => p[0]);
  const ys = points.map((p) => p[1]);
  return { min: [Math.min(...xs), Math.min(...ys)], max: [Math.max(...xs), Math.max(...ys)] };
};

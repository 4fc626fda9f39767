import type { Path, Segment } from './path.js';
import { distance2 } from './path-vector.js';

/** Length of one piece, mm: chord of a line, r·|sweep| of an arc. */
export const segmentLength = (s: Segment): number =>
  s.kind === 'line' ? distance2(s.from, s.to) : s.radius * Math.abs(s.sweep);

/** Length along a path, mm. */
export const pathLength = (path: Path): number => path.reduce((sum, s) => sum + segmentLength(s), 0);

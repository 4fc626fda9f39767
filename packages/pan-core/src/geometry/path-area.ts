import type { Path } from './path.js';
import { cross2, subtract2 } from './path-vector.js';

/**
 * Signed area of a closed path, mm²: positive counter-clockwise.
 * Green's theorem over the chords, plus r²(φ − sin φ)/2 between each arc and its chord; measured from the
 * path's own first point so that a far-off part loses no digits.
 */
export const pathArea = (path: Path): number => {
  const origin = path[0]?.from;
  if (origin === undefined) return 0;
  let twice = 0;
  for (const s of path) {
    twice += cross2(subtract2(s.from, origin), subtract2(s.to, origin));
    if (s.kind === 'arc') twice += s.radius * s.radius * (s.sweep - Math.sin(s.sweep));
  }
  return twice / 2;
};

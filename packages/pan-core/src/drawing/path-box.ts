import type { Path } from '../geometry/index.js';
import type { Vec2 } from '../numeric/index.js';

/** Lower left and upper right corner of a path, arcs by their true extent, mm. */
export const pathBox = (path: Path): readonly [Vec2, Vec2] => {
  const xs: number[] = [];
  const ys: number[] = [];
  for (const piece of path) {
    xs.push(piece.from[0], piece.to[0]);
    ys.push(piece.from[1], piece.to[1]);
    if (piece.kind === 'line') continue;
    const start = Math.atan2(piece.from[1] - piece.centre[1], piece.from[0] - piece.centre[0]);
    const [low, high] = piece.sweep >= 0 ? [start, start + piece.sweep] : [start + piece.sweep, start];
    // Only quarter points inside the sweep can stand out beyond the ends.
    for (let q = Math.ceil(low / (Math.PI / 2)); q * (Math.PI / 2) <= high; q++) {
      xs.push(piece.centre[0] + piece.radius * Math.cos((q * Math.PI) / 2));
      ys.push(piece.centre[1] + piece.radius * Math.sin((q * Math.PI) / 2));
    }
  }
  return [
    [Math.min(...xs), Math.min(...ys)],
    [Math.max(...xs), Math.max(...ys)],
  ];
};

import { directionAt, type Path, pointAt, segmentLength } from '../../geometry/index.js';
import type { Vec2 } from '../../numeric/index.js';

/** The straight line that an open mark's words run along: its longest piece, or that arc's tangent in the middle. */
export const markLine = (path: Path): readonly [Vec2, Vec2] | null => {
  const lines = path.filter((s) => s.kind === 'line');
  const [first, ...more] = lines.length > 0 ? lines : path;
  if (first === undefined) return null;
  const piece = more.reduce((a, b) => (segmentLength(b) > segmentLength(a) ? b : a), first);
  if (piece.kind === 'line') return [piece.from, piece.to];
  const [middle, along] = [pointAt(piece, 0.5), directionAt(piece, 0.5)];
  const reach = segmentLength(piece) / 2;
  return [
    [middle[0] - reach * along[0], middle[1] - reach * along[1]],
    [middle[0] + reach * along[0], middle[1] + reach * along[1]],
  ];
};

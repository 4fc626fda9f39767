import type { Vec2 } from '../numeric/index.js';
import type { Path, Segment } from './path.js';

/** Walks the other way. */
export const reversePath = (path: Path): Path =>
  path
    .map((s): Segment => {
      const turned = { ...s, from: s.to, to: s.from };
      return turned.kind === 'arc' ? { ...turned, sweep: -turned.sweep } : turned;
    })
    .reverse();

/** A rigid move of the plane: mirror first if asked, then turn about the origin, then shift. */
export interface Move {
  /** The coordinate whose sign is changed. */
  readonly mirror?: 'x' | 'y';
  readonly turn?: number;
  readonly shift?: Vec2;
}

export const movePoint = ({ mirror, turn = 0, shift = [0, 0] }: Move, p: Vec2): Vec2 => {
  const [x, y]: Vec2 = [mirror === 'x' ? -p[0] : p[0], mirror === 'y' ? -p[1] : p[1]];
  if (turn === 0) return [x + shift[0], y + shift[1]];
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  return [c * x - s * y + shift[0], s * x + c * y + shift[1]];
};

/** Moves a path rigidly; a mirror image of a counter-clockwise path runs clockwise. */
export const movePath = (move: Move, path: Path): Path =>
  path.map((s): Segment => {
    const from = movePoint(move, s.from);
    const to = movePoint(move, s.to);
    if (s.kind === 'line') return { kind: 'line', from, to };
    const sweep = move.mirror === undefined ? s.sweep : -s.sweep;
    return { ...s, from, to, centre: movePoint(move, s.centre), sweep };
  });

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

/** A rigid move of the plane: turn about the origin, mirror in the second axis first if asked, then shift. */
export interface Move {
  readonly turn?: number;
  /** Reflects y → −y before turning. */
  readonly mirror?: boolean;
  readonly shift?: Vec2;
}

export const movePoint = ({ turn = 0, mirror = false, shift = [0, 0] }: Move, p: Vec2): Vec2 => {
  const y = mirror ? -p[1] : p[1];
  if (turn === 0) return [p[0] + shift[0], y + shift[1]];
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  return [c * p[0] - s * y + shift[0], s * p[0] + c * y + shift[1]];
};

/** Moves a path rigidly; a mirror turns its sense of travel round as seen, and its arcs with it. */
export const movePath = (move: Move, path: Path): Path =>
  path.map((s): Segment => {
    const from = movePoint(move, s.from);
    const to = movePoint(move, s.to);
    if (s.kind === 'line') return { kind: 'line', from, to };
    return { ...s, from, to, centre: movePoint(move, s.centre), sweep: move.mirror ? -s.sweep : s.sweep };
  });

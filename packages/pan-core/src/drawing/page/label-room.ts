import type { PathBox } from '../../geometry/index.js';
import type { Vec2 } from '../../numeric/index.js';
import { LETTER_WIDTH, type Words, words } from './page.js';

/** Keeps account of what is covered, so that no words are put over others. */
export interface LabelRoom {
  /** Covers a box whatever lies there. */
  readonly cover: (box: PathBox) => void;
  /** Covers a line so far to either side of it, mm. */
  readonly coverLine: (from: Vec2, to: Vec2, beside: number) => void;
  /** Covers the first of several boxes that lies free, and returns its place among them; null when none does. */
  readonly take: (wished: readonly PathBox[]) => number | null;
  /** Covers the box of the first of several words that lies free, and returns it; null when none does. */
  readonly place: (wished: readonly Words[]) => Words | null;
}

export const labelRoom = (within: PathBox): LabelRoom => {
  const covered: PathBox[] = [];
  const free = (box: PathBox): boolean =>
    box.min[0] >= within.min[0] &&
    box.min[1] >= within.min[1] &&
    box.max[0] <= within.max[0] &&
    box.max[1] <= within.max[1] &&
    covered.every((other) => !meet(box, other));
  const take = (wished: readonly PathBox[]): number | null => {
    const found = wished.findIndex(free);
    if (found < 0) return null;
    covered.push(wished[found] as PathBox);
    return found;
  };
  return {
    cover: (box) => {
      covered.push(box);
    },
    coverLine: (from, to, beside) => {
      const steps = Math.max(1, Math.ceil(Math.hypot(to[0] - from[0], to[1] - from[1]) / 2));
      for (let k = 0; k <= steps; k++) {
        const [x, y] = [from[0] + ((to[0] - from[0]) * k) / steps, from[1] + ((to[1] - from[1]) * k) / steps];
        covered.push({ min: [x - beside, y - beside], max: [x + beside, y + beside] });
      }
    },
    take,
    place: (wished) => wished[take(wished.map(wordBox)) ?? wished.length] ?? null,
  };
};

const meet = (a: PathBox, b: PathBox): boolean =>
  a.min[0] < b.max[0] && b.min[0] < a.max[0] && a.min[1] < b.max[1] && b.min[1] < a.max[1];

/** Box around words on the page, on the wide side. */
export const wordBox = ({ at, text, size, turned = 0, align = 'left', room }: Words): PathBox => {
  const full = [...text].length * size * LETTER_WIDTH * 1.1 + 0.4;
  const width = room === undefined ? full : Math.min(full, room);
  const start = align === 'centre' ? -width / 2 : align === 'right' ? -width : 0;
  const [c, s] = [Math.cos(turned), Math.sin(turned)];
  const corners: Vec2[] = [start, start + width].flatMap((u) =>
    [-0.28 * size, 0.82 * size].map((v): Vec2 => [at[0] + u * c - v * s, at[1] + u * s + v * c]),
  );
  const [xs, ys] = [corners.map((p) => p[0]), corners.map((p) => p[1])];
  return { min: [Math.min(...xs), Math.min(...ys)], max: [Math.max(...xs), Math.max(...ys)] };
};

/** The same words at several places round a point, nearest first. */
export const around = ([x, y]: Vec2, away: number, size: number, text: string): readonly Words[] => {
  const d = 0.7 * away + 0.5;
  const low = -0.35 * size;
  const under = -d - 0.7 * size;
  return [
    words([x + d, y + d], size, text),
    words([x - d, y + d], size, text, { align: 'right' }),
    words([x + d, y + under], size, text),
    words([x - d, y + under], size, text, { align: 'right' }),
    words([x + away + 1.6, y + low], size, text),
    words([x - away - 1.6, y + low], size, text, { align: 'right' }),
    words([x, y + away + 1.4], size, text, { align: 'centre' }),
    words([x, y - away - 1.2 - 0.7 * size], size, text, { align: 'centre' }),
  ];
};

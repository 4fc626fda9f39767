import { circlePath, type PathBox } from '../../geometry/index.js';
import type { Vec2 } from '../../numeric/index.js';
import type { Part } from '../../sheet/index.js';
import type { Seam } from '../../weld/index.js';
import type { LabelRoom } from '../page/label-room.js';
import { line, type PageItem, stroke, words } from '../page/page.js';
import { seamPlace } from './seam-place.js';
import { type At, arrowHead, dashes, sizeWords, tailItems, weldSign } from './weld-symbol.js';

/** Room of a symbol on a view, mm: its line with sizes and sign, and its tail. */
const LINE = 13;
const WIDTH = LINE + 7;
/** Heights of the full line and of the broken one under it. */
const HEIGHT = { all: 9, full: 4.9, broken: 4.1 } as const;

/** Places of a symbol round its seam, nearest first, mm from it. */
const AWAY = [9, 13, 18, 24, 31, 39, 48, 60];
const WAYS = 16;

/** Symbols that found room on a view, and the numbers of seams that are not on it. */
export interface WeldArrows {
  readonly items: readonly PageItem[];
  readonly missing: readonly number[];
}

/**
 * A weld symbol on the view for every seam that the part has a place of: ISO 2553 system A, from memory. The arrow
 * points at the seam; the sign stands on the full line where the weld is laid on the face that is drawn, and hangs
 * from the broken line where it is laid on the other face. The tail names the seam in the order of welding.
 *
 * @param at from the part's drawing to the page
 */
export const weldArrows = (
  part: Part,
  seams: readonly Seam[],
  at: (p: Vec2) => Vec2,
  labels: LabelRoom,
): WeldArrows => {
  const items: PageItem[] = [];
  const missing: number[] = [];
  const boxes: PathBox[] = [];
  for (const seam of seams) {
    const place = seamPlace(part, seam);
    const found = place === null ? null : arrowTo(seam, part, at(place), labels, boxes);
    if (found === null) missing.push(seam.number);
    else items.push(...found);
  }
  return { items, missing };
};

const arrowTo = (
  seam: Seam,
  part: Part,
  tip: Vec2,
  labels: LabelRoom,
  boxes: PathBox[],
): readonly PageItem[] | null => {
  const wished = AWAY.flatMap((away) =>
    Array.from({ length: WAYS }, (_, i): Vec2 => {
      // Slanting ways first: a leader along an edge is taken for it.
      const turn = ((i + 0.5) / WAYS) * 2 * Math.PI;
      return [tip[0] + away * Math.cos(turn), tip[1] + away * Math.sin(turn)];
    }),
  ).filter((end) => !boxes.some((box) => runsOver(end, tip, box)));
  const rooms = wished.map((end) => roomAt(end, end[0] < tip[0]));
  const taken = labels.take(rooms);
  const end = taken === null ? undefined : wished[taken];
  if (taken === null || end === undefined) return null;
  boxes.push(rooms[taken] as PathBox);
  labels.coverLine(end, tip, 0.3);
  return symbolAt(seam, part, tip, end, end[0] < tip[0]);
};

/** Whether a leader runs over another symbol. */
const runsOver = (a: Vec2, b: Vec2, { min, max }: PathBox): boolean =>
  Array.from({ length: 33 }, (_, i) => i / 32).some((t) => {
    const [x, y] = [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])];
    return x > min[0] && x < max[0] && y > min[1] && y < max[1];
  });

/** The symbol's box where its leader ends at a place: to the right of it, or to the left when it points rightward. */
const roomAt = ([x, y]: Vec2, leftward: boolean): PathBox => {
  const low = y - HEIGHT.full;
  const left = leftward ? x - WIDTH : x;
  return { min: [left - 0.5, low], max: [left + WIDTH + 0.5, low + HEIGHT.all] };
};

const symbolAt = (
  seam: Seam,
  part: Part,
  tip: Vec2,
  [x, y]: Vec2,
  leftward: boolean,
): readonly PageItem[] => {
  const left = leftward ? x - LINE : x;
  const onDrawnFace =
    part.drawnFace === 'either' || (part.drawnFace === 'oil side') === (seam.side === 'inside');
  const place: At = ([u, v]) => [left + u, y - HEIGHT.full + v];
  // The sign is drawn up from a line at v = 5.
  const sign: At = onDrawnFace
    ? ([u, v]) => place([u, HEIGHT.full + (v - 5)])
    : ([u, v]) => place([u, HEIGHT.broken - (v - 5)]);
  const tailEnd = leftward ? 0 : LINE;
  return [
    line('thin', [x, y], tip),
    arrowHead(tip, [x, y]),
    ...(seam.joint === 'ring' ? [stroke('thin', circlePath([x, y], 0.9))] : []),
    line('thin', place([0, HEIGHT.full]), place([LINE, HEIGHT.full])),
    ...dashes([0, HEIGHT.broken], [LINE, HEIGHT.broken]).map(([a, b]) => line('thin', place(a), place(b))),
    words(place([7.4, onDrawnFace ? HEIGHT.full + 0.7 : HEIGHT.broken - 2.6]), 2.3, sizeWords(seam), {
      align: 'right',
      room: 6.4,
    }),
    ...weldSign(seam.joint, sign, 8.4),
    ...tailItems(`S${seam.number}`, place, [tailEnd, HEIGHT.full], leftward ? -1 : 1, 5.5),
  ];
};

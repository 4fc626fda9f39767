import { circlePath, polylinePath } from '../../geometry/index.js';
import type { Vec2 } from '../../numeric/index.js';
import { PRACTICE, type Seam } from '../../weld/index.js';
import { line, type PageItem, stroke, words } from '../page/page.js';
import { trimmed } from '../part-words.js';

/** Room that a joint's picture with its symbol takes, mm. */
export const SYMBOL_WIDTH = 51;
/** Where a symbol's line ends and its tail begins. */
const TAIL = 42;
export const SYMBOL_HEIGHT = 11;

/**
 * A joint cut through, and the symbol that says how to weld it: ISO 2553, system A, from memory. The arrow
 * points at the weld's own side, so the sign stands on the full line and the broken line stays empty.
 *
 * @param tail what the fork at the end of the line says: the process by its number
 * @param corner lower left corner of the room
 */
export const weldSymbol = (seam: Seam, tail: string, [x, y]: Vec2): readonly PageItem[] => {
  const at = ([u, v]: Vec2): Vec2 => [x + u, y + v];
  const elbow: Vec2 = [14, 5];
  const target: Vec2 = JOINT_TARGET[seam.joint];
  const sign = 24;
  return [
    ...jointPicture(seam.joint, at),
    line('thin', at(elbow), at(target)),
    arrowHead(at(target), at(elbow)),
    line('thin', at(elbow), at([TAIL, 5])),
    ...tailItems(tail, at, [TAIL, 5], 1, SYMBOL_WIDTH - TAIL - 2),
    ...dashes([14, 4.2], [TAIL, 4.2]).map(([a, b]) => line('thin', at(a), at(b))),
    ...(seam.joint === 'ring' ? [stroke('thin', circlePath(at(elbow), 0.9))] : []),
    words(at([sign - 1, 5.8]), 2.5, sizeWords(seam), { align: 'right' }),
    ...weldSign(seam.joint, at, sign),
    ...(flush(seam) ? [line('thin', at([sign - 0.4, 9.2]), at([sign + 3.4, 9.2]))] : []),
    words(at([sign + 4, 5.8]), 2.5, runWords(seam), { room: TAIL - sign - 4 }),
  ];
};

/** Leg z of a fillet, depth s of a groove. */
export const sizeWords = ({ joint, size }: Seam): string =>
  `${joint === 'open corner' || joint === 'butt' ? 's' : 'z'}${trimmed(size, 1)}`;

/** Length, or count, length and gap of the stitches. */
export const runWords = ({ run, length }: Seam): string => {
  if (run === 'continuous') return length.toFixed(0);
  const { drawnStitch } = PRACTICE;
  const count = Math.max(1, Math.round((length + drawnStitch) / (2 * drawnStitch)));
  return `${count}×${drawnStitch} (${drawnStitch})`;
};

/** A run on the rail face is machined flat with it, and a joint of plates is dressed before the pan goes in. */
const flush = ({ step, joint }: Seam): boolean =>
  joint === 'butt' && (step === 'flange' || step === 'plate' || step === 'pieces');

/** From a symbol's own place to the page's. */
export type At = (p: Vec2) => Vec2;

/** The fork that ends a symbol's line, open away from it, with its words. */
export const tailItems = (
  text: string,
  at: At,
  [u, v]: Vec2,
  way: 1 | -1,
  room: number,
): readonly PageItem[] => [
  line('thin', at([u + 1.4 * way, v + 1.4]), at([u, v]), at([u + 1.4 * way, v - 1.4])),
  words(at([u + 1.8 * way, v - 0.8]), 2.3, text, { room, align: way === 1 ? 'left' : 'right' }),
];

/** The elementary sign of a joint on the line at v = 5, upward, `u` from the symbol's left. */
export const weldSign = (joint: Seam['joint'], at: At, u: number): readonly PageItem[] => {
  switch (joint) {
    case 'open corner':
      return [line('frame', at([u, 8.4]), at([u + 1.5, 5]), at([u + 3, 8.4]))];
    case 'butt':
      return [
        line('frame', at([u + 0.8, 5]), at([u + 0.8, 8.4])),
        line('frame', at([u + 2.2, 5]), at([u + 2.2, 8.4])),
      ];
    default:
      return [stroke('frame', polylinePath([at([u, 5]), at([u + 3, 5]), at([u, 8])], true))];
  }
};

const JOINT_TARGET: Readonly<Record<Seam['joint'], Vec2>> = {
  'open corner': [7.4, 7.4],
  fillet: [6.2, 4.2],
  tee: [6.2, 4.2],
  ring: [6.9, 4.2],
  butt: [5, 5.1],
};

const jointPicture = (joint: Seam['joint'], at: At): readonly PageItem[] => {
  const plate = (a: Vec2, b: Vec2): PageItem[] => {
    const path = polylinePath([at(a), at([b[0], a[1]]), at(b), at([a[0], b[1]])], true);
    return [{ kind: 'fill', shade: 'pale', path }, stroke('thin', path)];
  };
  const bead = (...corners: readonly Vec2[]): PageItem => ({
    kind: 'fill',
    shade: 'ink',
    path: polylinePath(corners.map(at), true),
  });
  switch (joint) {
    case 'open corner':
      return [
        ...plate([0.5, 6], [6, 8]),
        ...plate([6, 0.5], [8, 6]),
        bead([6, 6], [8, 6], [7.6, 7.6], [6, 8]),
      ];
    case 'butt':
      return [
        ...plate([0.5, 3], [4.8, 5]),
        ...plate([5.2, 3], [9.5, 5]),
        bead([4.4, 5.2], [4.9, 3.2], [5.1, 3.2], [5.6, 5.2]),
      ];
    case 'ring':
      return [
        ...plate([0.5, 1.5], [9.5, 3.5]),
        ...plate([3.5, 0.8], [6.2, 9]),
        bead([6.2, 3.5], [8, 3.5], [6.2, 5.3]),
        bead([3.5, 3.5], [1.7, 3.5], [3.5, 5.3]),
      ];
    default:
      return [
        ...plate([0.5, 1.5], [9.5, 3.5]),
        ...plate([3.5, 3.5], [5.5, 9.5]),
        bead([5.5, 3.5], [7.3, 3.5], [5.5, 5.3]),
      ];
  }
};

/** Broken line as its own strokes, since at this size the dash must not depend on the pen. */
export const dashes = ([ax, ay]: Vec2, [bx]: Vec2): readonly (readonly [Vec2, Vec2])[] =>
  Array.from({ length: Math.floor((bx - ax) / 2.4) }, (_, i) => [
    [ax + 2.4 * i, ay],
    [ax + 2.4 * i + 1.5, ay],
  ]);

export const arrowHead = (tip: Vec2, from: Vec2): PageItem => {
  const [dx, dy] = [from[0] - tip[0], from[1] - tip[1]];
  const length = Math.hypot(dx, dy);
  const [ux, uy] = [dx / length, dy / length];
  const back: Vec2 = [tip[0] + 2 * ux, tip[1] + 2 * uy];
  const path = polylinePath(
    [tip, [back[0] - 0.45 * uy, back[1] + 0.45 * ux], [back[0] + 0.45 * uy, back[1] - 0.45 * ux]],
    true,
  );
  return { kind: 'fill', shade: 'ink', path };
};

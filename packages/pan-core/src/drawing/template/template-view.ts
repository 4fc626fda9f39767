import { circlePath, movePath, movePoint, type Path, pathBox } from '../../geometry/index.js';
import type { Vec2 } from '../../numeric/index.js';
import type { Fold, Mark, Part, RoundHole } from '../../sheet/index.js';

/** A part as it is looked at from outside the pan, its lower left corner at 0, 0. */
export interface TemplateView {
  readonly outline: Path;
  readonly openings: readonly Path[];
  readonly holes: readonly RoundHole[];
  readonly folds: readonly (Fold & { readonly towardsYou: boolean })[];
  readonly marks: readonly Mark[];
  readonly size: Vec2;
  /** Which face is up, and which way round the part lies where the part itself says so. */
  readonly face: string;
  readonly hand: 'left hand' | 'right hand' | null;
}

/** A part drawn with its oil side up is mirrored, since its template is stuck on from outside. */
export const templateView = (part: Part): TemplateView => {
  const mirrored = part.drawnFace === 'oil side';
  const turned = mirrored ? { mirror: 'x' as const } : {};
  const { min, max } = pathBox(movePath(turned, part.outline));
  const move = { ...turned, shift: [-min[0], -min[1]] as Vec2 };
  return {
    outline: movePath(move, part.outline),
    openings: part.openings.map((opening) => movePath(move, opening)),
    holes: part.holes.map((hole) => ({ ...hole, at: movePoint(move, hole.at) })),
    folds: part.folds.map((fold) => ({
      ...fold,
      from: movePoint(move, fold.from),
      to: movePoint(move, fold.to),
      towardsYou: (fold.direction === 'up') !== mirrored,
    })),
    marks: part.marks.map((mark) => ({ ...mark, path: movePath(move, mark.path) })),
    size: [max[0] - min[0], max[1] - min[1]],
    face: faceWords(part, mirrored),
    hand: /\bleft\b/.test(part.name) ? 'left hand' : /\bright\b/.test(part.name) ? 'right hand' : null,
  };
};

/** Every edge to cut of a view, the outline first. */
export const cutPaths = (view: TemplateView): readonly Path[] => [
  view.outline,
  ...view.openings,
  ...view.holes.map((hole) => circlePath(hole.at, hole.diameter / 2)),
];

/** How a part's own first note says that its oil side lies up, and the same from the other side. */
const UP: readonly (readonly [string, string])[] = [
  ['Inside face up', 'Seen from outside'],
  ['Seen from above', 'Seen from outside, below'],
];

const faceWords = (part: Part, mirrored: boolean): string => {
  const note = part.notes[0]?.split('. ')[0]?.replace(/\.$/, '') ?? '';
  if (!mirrored) {
    if (note.startsWith('Seen from')) return `${note}.`;
    return part.drawnFace === 'outside' ? 'Seen from outside.' : 'Either face up.';
  }
  const known = UP.find(([inside]) => note.startsWith(inside));
  if (known === undefined) return 'Seen from outside.';
  // Left and right change places in the picture; the car's own left and right stay.
  const place = note
    .slice(known[0].length)
    .replace(/\bat the (left|right)\b/g, (_, side: string) => `at the ${side === 'left' ? 'right' : 'left'}`);
  return `${known[1]}${place}.`;
};

import { cross2, dot2, subtract2, unit2 } from '../geometry/index.js';
import type { Vec2 } from '../numeric/index.js';
import { type Hinge, hingedPart } from './fold-hinge.js';
import { hingeRoom, STROKE } from './fold-room.js';
import { searchFolds } from './fold-search.js';
import type { Fold, Part } from './part.js';

/** An order in which a part can be bent on a straight brake. */
export interface FoldOrder {
  readonly order: readonly Fold[];
  /** The first fold at which sheet already folded runs into the punch; null when none does. */
  readonly fouls: Fold | null;
  /** Least distance of folded sheet from the middle of the punch as far as the first that fouls, mm; infinite where none comes near. */
  readonly room: number;
  /** False where the search stopped at its bound before every order was tried. */
  readonly complete: boolean;
}

/** Folds nearer than this to one direction lie across one strip, radians. */
const PARALLEL = 0.02;

/**
 * The order that keeps most clear of a punch standing straight over the fold and as long as it; null for a part
 * without folds, or whose folds do not part it into a tree of faces. A part whose folds all lie across one strip
 * is a chain in the plane across them; any other is bent in space. Each bend is a corner at the middle of its
 * zone; where two orders are alike, outer folds come first.
 *
 * @param half half the punch's thickness, mm
 */
export const foldOrder = (part: Part, half: number): FoldOrder | null => {
  const bending = chainOf(part) ?? treeOf(part);
  if (bending === null) return null;
  const { groups, first, roomAt } = bending;
  const best = searchFolds(first, roomAt, half);
  const stop = best.rooms.findIndex((room) => room < half);
  const at = best.order[stop];
  return {
    order: best.order.flatMap((i) => groups[i]!),
    fouls: at === undefined ? null : groups[at]![0]!,
    room: Math.min(...(stop < 0 ? best.rooms : best.rooms.slice(0, stop + 1))),
    complete: best.complete,
  };
};

/** What can be bent at once, in what order that is tried first, and the room for each. */
interface Bending {
  readonly groups: readonly (readonly Fold[])[];
  readonly first: readonly number[];
  readonly roomAt: (k: number, done: ReadonlySet<number>) => number;
}

const chainOf = (part: Part): Bending | null => {
  const [first] = part.folds;
  if (first === undefined) return null;
  const along = unit2(subtract2(first.to, first.from));
  if (part.folds.some((f) => Math.abs(cross2(along, unit2(subtract2(f.to, f.from)))) > PARALLEL)) return null;
  const across: Vec2 = [-along[1], along[0]];
  const place = (p: Vec2): number => dot2(p, across);
  const ends = part.outline.map((s) => place(s.from));
  const chain = [...part.folds]
    .map((fold) => ({ fold, at: (place(fold.from) + place(fold.to)) / 2 }))
    .sort((a, b) => a.at - b.at);
  const [low, high] = [Math.min(...ends), Math.max(...ends)];
  const depth = (i: number): number => Math.min(i, chain.length - 1 - i);
  return {
    groups: chain.map(({ fold }) => [fold]),
    first: chain.map((_, i) => i).sort((a, b) => depth(a) - depth(b)),
    roomAt: (k, done) => Math.min(...STROKE.map((share) => leastX(chain, low, high, k, done, share))),
  };
};

const treeOf = (part: Part): Bending | null => {
  const hinged = part.folds.length === 0 ? null : hingedPart(part);
  if (hinged === null) return null;
  const { hinges } = hinged;
  const inward = stepsInward(hinges);
  return {
    groups: hinges.map(({ folds }) => folds),
    first: hinges.map((_, i) => i).sort((a, b) => inward[a]! - inward[b]!),
    roomAt: (k, done) => hingeRoom(hinged, k, done),
  };
};

/** How many rounds of taking off the outermost faces pass before each hinge is outermost. */
const stepsInward = (hinges: readonly Hinge[]): readonly number[] => {
  const steps = hinges.map(() => -1);
  for (let round = 0; steps.includes(-1); round++) {
    const left = hinges.filter((_, i) => steps[i] === -1);
    const count = (face: number): number => left.filter((h) => h.right === face || h.left === face).length;
    const outer = new Set(left.filter((h) => count(h.right) === 1 || count(h.left) === 1));
    hinges.forEach((hinge, i) => {
      if (outer.has(hinge)) steps[i] = round;
    });
  }
  return steps;
};

/**
 * How near the sheet comes to the punch's middle plane when fold k is bent by a share of its angle, the folds
 * in `done` standing at theirs: both legs rise from the fold by half the turn, towards the punch.
 */
const leastX = (
  chain: readonly { readonly fold: Fold; readonly at: number }[],
  low: number,
  high: number,
  k: number,
  done: ReadonlySet<number>,
  share: number,
): number => {
  const own = chain[k]!.fold;
  const up = own.direction;
  let least = Number.POSITIVE_INFINITY;
  for (const way of [-1, 1]) {
    const start = (own.angle * share) / 2;
    let [x, y, heading, at] = [0, 0, start, chain[k]!.at];
    for (let i = k + way; ; i += way) {
      const next = chain[i];
      const to = next === undefined ? (way < 0 ? low : high) : next.at;
      const length = Math.abs(to - at);
      [x, y, at] = [x + length * Math.cos(heading), y + length * Math.sin(heading), to];
      // A leg still straight from the fold keeps clear by itself; below the fold there is no punch.
      if (y > 0 && heading !== start) least = Math.min(least, x);
      if (next === undefined) break;
      if (done.has(i)) heading += next.fold.direction === up ? next.fold.angle : -next.fold.angle;
    }
  }
  return least;
};

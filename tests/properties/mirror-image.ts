import { type Path, pointAt, type Segment, segmentLength } from 'pan-core/geometry/index.js';
import type { Part } from 'pan-core/sheet/index.js';

type P2 = readonly [number, number];
/** A point of one part as a place on another. */
type Laid = (p: P2) => P2;

/** How far a part laid on another may be out before it is none of its image, mm: far above rounding. */
const NO_IMAGE = 1;

/**
 * Largest distance, mm, between the image of a part in a mirror and another part, over every corner and arc of its
 * cuts, every hole and every end of a fold; infinite where they differ in kind or number. The image is turned and
 * shifted, and never turned over, so that a part and its own mirror image are told apart.
 *
 * @param reflect false: the part itself is laid on the other one
 */
export const imageError = (part: Part, other: Part, reflect = true): number => {
  const flip: Laid = reflect ? ([x, y]) => [x, -y] : (p) => p;
  const longest = part.outline.reduce((a, b) => (segmentLength(b) > segmentLength(a) ? b : a));
  // A mirrored loop runs the other way round, so its pieces change ends.
  const [from, to] = reflect ? [flip(longest.to), flip(longest.from)] : [longest.from, longest.to];
  const errors = other.outline
    .filter((s) => s.kind === longest.kind && Math.abs(segmentLength(s) - segmentLength(longest)) < NO_IMAGE)
    .map((s) => laidError(part, other, onto(flip, from, to, s)));
  return Math.min(Number.POSITIVE_INFINITY, ...errors);
};

/** Turns and shifts so that one piece comes to lie along another. */
const onto = (flip: Laid, from: P2, to: P2, s: Segment): Laid => {
  const [a, b] = [
    Math.atan2(to[1] - from[1], to[0] - from[0]),
    Math.atan2(s.to[1] - s.from[1], s.to[0] - s.from[0]),
  ];
  const [cos, sin] = [Math.cos(b - a), Math.sin(b - a)];
  return (p) => {
    const [x, y] = flip(p);
    const [u, v] = [x - from[0], y - from[1]];
    return [s.from[0] + u * cos - v * sin, s.from[1] + u * sin + v * cos];
  };
};

const laidError = (part: Part, other: Part, lay: Laid): number => {
  const pieces = (p: Part): readonly Path[] => [p.outline, ...p.openings];
  const cuts = (p: Part, at: Laid): readonly (readonly P2[])[] =>
    pieces(p).flatMap((path) => path.map((s) => ends(at(s.from), at(s.to), at(pointAt(s, 0.5)))));
  const same: Laid = (p) => p;
  const holes = (p: Part, at: Laid): readonly (readonly P2[])[] =>
    [...p.holes, ...(p.pilots ?? [])].map((h) => [at(h.at), [h.diameter, 0]]);
  const folds = (p: Part, at: Laid): readonly (readonly P2[])[] =>
    p.folds.map((f) => [
      ...ends(at(f.from), at(f.to), at([(f.from[0] + f.to[0]) / 2, (f.from[1] + f.to[1]) / 2])),
      // Way and angle as places of their own; a bend the other way is as far off as can be.
      [f.direction === 'up' ? 0 : 1e3, 100 * f.angle],
      [f.radius, f.allowance],
    ]);
  return Math.max(
    matched(cuts(part, lay), cuts(other, same)),
    matched(holes(part, lay), holes(other, same)),
    matched(folds(part, lay), folds(other, same)),
  );
};

/** Both ends of a piece in an order that does not ask which way it runs, then its middle. */
const ends = (a: P2, b: P2, middle: P2): readonly P2[] => {
  const key = (p: P2): number => p[0] + Math.SQRT2 * p[1];
  return key(a) < key(b) ? [a, b, middle] : [b, a, middle];
};

/** Each of one list with the nearest that is left of the other: the largest distance. */
const matched = (mine: readonly (readonly P2[])[], theirs: readonly (readonly P2[])[]): number => {
  if (mine.length !== theirs.length) return Number.POSITIVE_INFINITY;
  const rest = [...theirs];
  let worst = 0;
  for (const one of mine) {
    const off = rest.map((other) =>
      Math.max(...one.map((p, i) => Math.hypot(p[0] - other[i]![0], p[1] - other[i]![1]))),
    );
    const best = off.indexOf(Math.min(...off));
    worst = Math.max(worst, off[best]!);
    rest.splice(best, 1);
  }
  return worst;
};

/** What comparing all parts of two sets gave. */
export interface SetImage {
  /** Largest distance of any part's image from its twin, mm. */
  readonly worst: number;
  /** Parts that are not alike to their twin without the mirror: the ones that can be told from their image. */
  readonly handed: number;
}

/** Pairs every part with the part of the other set that its image lies on. */
export const setImage = (parts: readonly Part[], others: readonly Part[]): SetImage => {
  if (parts.length !== others.length) return { worst: Number.POSITIVE_INFINITY, handed: 0 };
  const rest = [...others];
  let [worst, handed] = [0, 0];
  for (const part of parts) {
    // A flat blank with no face of its own may be turned over by hand.
    const turns = part.drawnFace === 'either' && part.folds.length === 0;
    const off = rest.map((other) => {
      if (Math.abs(other.area - part.area) >= NO_IMAGE) return Number.POSITIVE_INFINITY;
      return Math.min(
        imageError(part, other),
        turns ? imageError(part, other, false) : Number.POSITIVE_INFINITY,
      );
    });
    const best = off.indexOf(Math.min(...off));
    worst = Math.max(worst, off[best]!);
    const [twin] = rest.splice(best, 1);
    if (!turns && imageError(part, twin!, false) > NO_IMAGE) handed++;
  }
  return { worst, handed };
};

import type { Vec2 } from '../numeric/index.js';
import type { Path, Segment } from './path.js';
import { pathArea } from './path-area.js';
import { SAME_POINT, segmentMeetings } from './path-crossing.js';
import { segmentLength } from './path-length.js';
import { directionAt, pointAt, trimSegment } from './path-point.js';
import { clockwise, counterClockwise, pointInPath } from './path-shape.js';
import { reversePath } from './path-transform.js';
import { distance2, dot2 } from './path-vector.js';

/** Flat material: outer loops counter-clockwise, holes clockwise. */
export interface Region {
  readonly loops: readonly Path[];
}

/** Loops smaller than this are rounding, mm². */
const NO_AREA = 1e-6;

/**
 * A region less a simple closed path, arcs kept true.
 * Edges are cut where they meet; pieces of the region outside the cutter and pieces of the cutter inside
 * the region remain, joined end to end. A shared edge stays when the cutter lies beyond it.
 */
export const subtractPath = (region: Region, cutter: Path): Region => {
  const cut = counterClockwise(cutter);
  const keptRegion: Segment[] = [];
  for (const loop of region.loops)
    for (const piece of splitAt(loop, [cut])) {
      const where = pointInPath(cut, pointAt(piece, 0.5));
      if (where === 'outside' || (where === 'edge' && !sameSense(piece, cut))) keptRegion.push(piece);
    }
  const keptCut: Segment[] = [];
  for (const piece of splitAt(cut, region.loops)) {
    if (insideRegion(region, pointAt(piece, 0.5))) keptCut.push(piece);
  }
  const loops = joinLoops([...keptRegion, ...reversePath(keptCut)]);
  return { loops: loops.filter((loop) => Math.abs(pathArea(loop)) > NO_AREA).map(mergeRuns) };
};

/** Whether a point is strictly inside the material. */
export const insideRegion = (region: Region, p: Vec2): boolean => {
  let depth = 0;
  for (const loop of region.loops) {
    const where = pointInPath(loop, p);
    if (where === 'edge') return false;
    if (where === 'inside') depth++;
  }
  return depth % 2 === 1;
};

const splitAt = (path: Path, others: readonly Path[]): readonly Segment[] =>
  path.flatMap((s) => {
    const shares = others.flatMap((other) => other.flatMap((t) => segmentMeetings(s, t).map((m) => m.a)));
    const cuts = [0, ...shares.sort((a, b) => a - b), 1];
    const out: Segment[] = [];
    for (let i = 0; i + 1 < cuts.length; i++) {
      const [a, b] = [cuts[i]!, cuts[i + 1]!];
      if ((b - a) * segmentLength(s) > 2 * SAME_POINT) out.push(trimSegment(s, a, b));
    }
    return out;
  });

/** Whether the cutter runs along a shared piece in the same sense, that is, with its inside on the same side. */
const sameSense = (piece: Segment, cut: Path): boolean => {
  const mid = pointAt(piece, 0.5);
  const along = directionAt(piece, 0.5);
  for (const s of cut) {
    for (const m of segmentMeetings(s, { kind: 'line', from: mid, to: piece.to })) {
      if (distance2(pointAt(s, m.a), mid) < 3 * SAME_POINT) return dot2(directionAt(s, m.a), along) > 0;
    }
  }
  return false;
};

/** Chains pieces end to end into closed loops. */
const joinLoops = (pieces: readonly Segment[]): readonly Path[] => {
  const left = new Set(pieces);
  const loops: Path[] = [];
  for (const first of pieces) {
    if (!left.delete(first)) continue;
    const loop: Segment[] = [first];
    for (;;) {
      const end = loop[loop.length - 1]!;
      if (distance2(end.to, first.from) < 10 * SAME_POINT) break;
      const next = nearestStart(left, end.to);
      if (next === null) break;
      left.delete(next);
      loop.push(next);
    }
    if (distance2(loop[loop.length - 1]!.to, first.from) < 10 * SAME_POINT) loops.push(snapJoints(loop));
  }
  return loops;
};

const nearestStart = (pieces: ReadonlySet<Segment>, at: Vec2): Segment | null => {
  let best: Segment | null = null;
  let least = 10 * SAME_POINT;
  for (const s of pieces) {
    const d = distance2(s.from, at);
    if (d < least) [best, least] = [s, d];
  }
  return best;
};

/** Makes each piece begin at the very point where the one before ends. */
const snapJoints = (loop: readonly Segment[]): Path =>
  loop.map((s, i) => ({ ...s, from: loop[(i + loop.length - 1) % loop.length]!.to }));

/** Joins lines in the same direction and arcs of the same circle, so that a cut along an old station leaves no joint. */
export const mergeRuns = (path: Path): Path => {
  const out: Segment[] = [];
  for (const s of path) {
    const before = out[out.length - 1];
    if (before !== undefined && runsOn(before, s)) out[out.length - 1] = joined(before, s);
    else out.push(s);
  }
  const [first, last] = [out[0], out[out.length - 1]];
  if (out.length > 2 && first !== undefined && last !== undefined && runsOn(last, first)) {
    out[0] = joined(last, first);
    out.pop();
  }
  return out;
};

const joined = (a: Segment, b: Segment): Segment =>
  a.kind === 'arc' && b.kind === 'arc' ? { ...a, to: b.to, sweep: a.sweep + b.sweep } : { ...a, to: b.to };

/** Whether b goes on along the same line, or around the same circle in the same sense. */
const runsOn = (a: Segment, b: Segment): boolean => {
  if (a.kind === 'arc' && b.kind === 'arc') {
    return (
      distance2(a.centre, b.centre) < SAME_POINT &&
      Math.abs(a.radius - b.radius) < SAME_POINT &&
      a.sweep * b.sweep > 0 &&
      Math.abs(a.sweep + b.sweep) < Math.PI
    );
  }
  if (a.kind !== 'line' || b.kind !== 'line') return false;
  const [u, v] = [directionAt(a, 0), directionAt(b, 0)];
  const reach = Math.min(segmentLength(a), segmentLength(b));
  return dot2(u, v) > 0 && Math.abs(u[0] * v[1] - u[1] * v[0]) * reach < SAME_POINT;
};

/** Outer loops, each with the holes inside it. */
export const regionPieces = (
  region: Region,
): readonly { readonly outline: Path; readonly openings: readonly Path[] }[] => {
  const holes = region.loops.filter((loop) => pathArea(loop) < 0);
  return region.loops
    .filter((loop) => pathArea(loop) > 0)
    .map((outline) => ({
      outline,
      openings: holes.filter((h) => pointInPath(outline, pointAt(h[0]!, 0.5)) === 'inside').map(clockwise),
    }));
};

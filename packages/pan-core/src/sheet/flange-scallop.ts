import type { Design, Point2 } from '../design/index.js';
import {
  arcThrough,
  lineSegment,
  type Path,
  pathGap,
  type Segment,
  segmentLength,
  subtract2,
  unit2,
} from '../geometry/index.js';
import type { Vec2 } from '../numeric/index.js';
import type { Profile } from '../pan/index.js';
import { inEndSeal } from './end-seal.js';
import { type FlangeHole, flangeHoles } from './flange-hole.js';
import { flangeOpening, flangeOutline } from './flange-shape.js';

/** Edge left whole each side of a bolt, in hole diameters: common practice, no source. */
const BOSS = 1.5;
/** A relief is never deeper than this share of its length, so that it stays easy to cut and to clean. */
const STEEPEST = 0.25;
/** A relief less deep than this is not worth its cut, mm: common practice, no source. */
const SHALLOWEST = 3;
/** A hole whose foot on a line is this near is beside that line, mm. */
const BESIDE = 1e-6;

/**
 * The flange's outer edge with its relief: between holes that follow each other along a straight edge, one arc
 * that leaves `lighten.land` beside the opening. Nothing is taken off at corners, end seals and joints.
 */
export const flangeRim = (design: Design, profile: Profile): Path => {
  const outline = flangeOutline(design);
  const { lighten } = design.pan.flange;
  if (lighten === null) return outline;
  const opening = flangeOpening(design, profile);
  const holes = flangeHoles(design);
  const line = nearestLines(outline, holes);
  return outline.flatMap((segment, i): Path => {
    if (segment.kind !== 'line') return [segment];
    const beside = holes.filter((_, h) => line[h] === i);
    return relieved(segment, beside, (from, to) => {
      if (inEndSeal(design, [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2]) || overJoint(design, from, to))
        return 0;
      return pathGap([lineSegment(from, to)], opening) - lighten.land;
    });
  });
};

/** For each hole the place of the outline's line that its foot falls on nearest, −1 for none. */
const nearestLines = (outline: Path, holes: readonly FlangeHole[]): readonly number[] =>
  holes.map(({ at }) => {
    const away = outline.map((s) => (s.kind === 'line' ? footDistance(s, at) : Number.POSITIVE_INFINITY));
    const least = Math.min(...away);
    return least < Number.POSITIVE_INFINITY ? away.indexOf(least) : -1;
  });

const along = ({ from, to }: Segment): Vec2 => unit2(subtract2(to, from));

const placeOn = (s: Segment, p: Point2): number => {
  const [ux, uy] = along(s);
  return (p[0] - s.from[0]) * ux + (p[1] - s.from[1]) * uy;
};

const footDistance = (s: Segment, p: Point2): number => {
  const place = placeOn(s, p);
  if (place < -BESIDE || place > segmentLength(s) + BESIDE) return Number.POSITIVE_INFINITY;
  const [ux, uy] = along(s);
  return Math.abs((p[0] - s.from[0]) * uy - (p[1] - s.from[1]) * ux);
};

const relieved = (
  segment: Segment,
  holes: readonly FlangeHole[],
  room: (from: Vec2, to: Vec2) => number,
): Path => {
  const [ux, uy] = along(segment);
  const at = (place: number, in_ = 0): Vec2 => [
    segment.from[0] + ux * place - uy * in_,
    segment.from[1] + uy * place + ux * in_,
  ];
  const ordered = holes
    .map((hole) => ({ hole, place: placeOn(segment, hole.at) }))
    .sort((a, b) => a.place - b.place);
  const out: Segment[] = [];
  let last = segment.from;
  ordered.slice(1).forEach(({ hole, place }, i) => {
    const before = ordered[i]!;
    const [a, b] = [before.place + BOSS * before.hole.diameter, place - BOSS * hole.diameter];
    if (b <= a) return;
    const depth = Math.min(room(at(a), at(b)), STEEPEST * (b - a));
    if (depth < SHALLOWEST) return;
    out.push(lineSegment(last, at(a)), arcThrough(at(a), at((a + b) / 2, depth), at(b)));
    last = at(b);
  });
  return [...out, lineSegment(last, segment.to)];
};

/** Whether a joint of a two-piece flange comes between two places. */
const overJoint = ({ pan: { flange } }: Design, from: Vec2, to: Vec2): boolean => {
  const { split } = flange;
  if (split === null) return false;
  const k = split.way === 'across' ? 0 : 1;
  return (from[k] - split.at) * (to[k] - split.at) <= 0;
};

import {
  dot2,
  left2,
  lineSegment,
  mix2,
  type Path,
  pointAt,
  scale2,
  segmentMeetings,
  subtract2,
  unit2,
} from '../geometry/index.js';
import type { Vec2 } from '../numeric/index.js';
import type { Fold, Part } from './part.js';

/** A ray longer than any part, mm. */
const RAY = 1e4;
/** Places along a fold where the legs are measured, as shares of its length. */
const PLACES = [0.02, 0.26, 0.5, 0.74, 0.98];

/**
 * Shortest leg at a fold, mm, as measured over the outside of the bend: from the fold's middle square to it as far
 * as the nearest edge or the middle of the next bend zone, less half the allowance, plus tan(θ/2)(R + T).
 */
export const shortestLeg = (part: Part, fold: Fold): number => {
  const along = unit2(subtract2(fold.to, fold.from));
  const others = part.folds.filter((f) => f !== fold);
  const setback = Math.tan(fold.angle / 2) * (fold.radius + part.thickness);
  let least = Number.POSITIVE_INFINITY;
  for (const t of PLACES) {
    const from = mix2(fold.from, fold.to, t);
    for (const way of [left2(along), scale2(left2(along), -1)]) {
      const ray = lineSegment(from, [from[0] + way[0] * RAY, from[1] + way[1] * RAY]);
      const edge = firstHit(ray, [part.outline, ...part.openings]);
      const bends = others.map(
        (f) => firstHit(ray, [[lineSegment(f.from, f.to)]]) - f.allowance / 2 + setbackOf(part, f),
      );
      least = Math.min(least, edge, ...bends);
    }
  }
  return least - fold.allowance / 2 + setback;
};

const setbackOf = (part: Part, f: Fold): number => Math.tan(f.angle / 2) * (f.radius + part.thickness);

const firstHit = (ray: ReturnType<typeof lineSegment>, loops: readonly Path[]): number => {
  let least = Number.POSITIVE_INFINITY;
  for (const loop of loops)
    for (const s of loop)
      for (const m of segmentMeetings(ray, s)) {
        const away = m.a * RAY;
        if (away > 1e-6) least = Math.min(least, away);
      }
  return least;
};

/** Least distance from a round hole's edge to the tangent line of a fold beside it, mm; negative inside the bend. */
export const holeToBend = (fold: Fold, at: Vec2, diameter: number): number => {
  const along = unit2(subtract2(fold.to, fold.from));
  const r = subtract2(at, fold.from);
  const s = Math.max(0, Math.min(1, dot2(r, along) / Math.hypot(...subtract2(fold.to, fold.from))));
  const nearest = pointAt(lineSegment(fold.from, fold.to), s);
  return Math.hypot(...subtract2(at, nearest)) - diameter / 2 - fold.allowance / 2;
};

/** Corners of a part's cuts that lie inside a fold's bend zone, away from the fold's own ends. */
export const cornersInBend = (part: Part, fold: Fold): number => {
  const d = subtract2(fold.to, fold.from);
  const length = Math.hypot(d[0], d[1]);
  const along = unit2(d);
  const clear = fold.allowance / 2 - 1e-6;
  return [part.outline, ...part.openings].flat().filter(({ from }) => {
    const r = subtract2(from, fold.from);
    const s = dot2(r, along);
    return s > END && s < length - END && Math.abs(dot2(r, left2(along))) < clear;
  }).length;
};

/** How near a fold's end a corner is the edge's own, mm. */
const END = 1;

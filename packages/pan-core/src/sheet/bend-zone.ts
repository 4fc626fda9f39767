import { cross2, distance2, dot2, mix2, subtract2, unit2 } from '../geometry/index.js';
import type { Vec2 } from '../numeric/index.js';

type Ends = readonly [Vec2, Vec2];

/** A rim that turns back by less than this past the end of a fold goes on square to it, mm per mm. */
const SQUARE = 1e-6;

/**
 * Corners of a bend zone: both tangent lines as their leaves have them, drawn in to a square end where a leaf
 * goes on past the fold beside the zone, so that a slit as wide as a relief parts them.
 *
 * @param onA ends of the tangent line on the leaf to the left of from→to, onB on the leaf to the right
 * @param pastA where the rim of that leaf goes from each end
 */
export const bendZone = (
  onA: Ends,
  onB: Ends,
  pastA: Ends,
  pastB: Ends,
  slit: number,
): readonly [Vec2, Vec2, Vec2, Vec2] => {
  if (distance2(onA[0], onA[1]) === 0 || distance2(onB[0], onB[1]) === 0)
    return [onA[0], onA[1], onB[1], onB[0]];
  const along = unit2(subtract2(onA[1], onA[0]));
  const place = (p: Vec2): number => dot2(along, subtract2(p, onA[0]));
  const turnsBack = (from: Vec2, to: Vec2, side: 1 | -1): boolean => {
    const way = subtract2(to, from);
    return side * cross2(along, way) > SQUARE * Math.hypot(way[0], way[1]);
  };
  const end = (i: 0 | 1, sense: 1 | -1): readonly [number, number] => {
    const [a, b] = [place(onA[i]), place(onB[i])];
    // Leaf a lies to the left of its edge and the zone to the right; leaf b the other way about.
    const limits = [
      ...(turnsBack(onA[i], pastA[i], -1) ? [a + sense * slit] : []),
      ...(turnsBack(onB[i], pastB[i], 1) ? [b + sense * slit] : []),
    ];
    const inner = (own: number): number =>
      limits.reduce((best, limit) => (sense * (limit - best) > 0 ? limit : best), own);
    return [inner(a), inner(b)];
  };
  const [a0, b0] = end(0, 1);
  const [a1, b1] = end(1, -1);
  const on = ([from, to]: Ends, own: number, wanted: number): Vec2 =>
    own === wanted ? from : mix2(from, to, (wanted - place(from)) / (place(to) - place(from)));
  return [
    on(onA, place(onA[0]), a0),
    on([onA[1], onA[0]], place(onA[1]), a1),
    on([onB[1], onB[0]], place(onB[1]), b1),
    on(onB, place(onB[0]), b0),
  ];
};

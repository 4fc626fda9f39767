import { cross3, dot3, scale3, subtract3, unit3, type Vec3 } from '../numeric/index.js';
import type { Leaf } from './leaf.js';
import { FLAT_TURN, type LeafEdge, type RimPlace } from './leaf-edge.js';

/** Planes nearer to lying along the fold than this cut no end off it. */
const ALONG = 0.02;

/** What stands at an edge of a rim: the leaf beyond it by its normal, and whether that one is folded to it. */
export interface Beyond {
  readonly normal: Vec3 | null;
  readonly folds: boolean;
}

/**
 * How far the straight ends of a bend zone leave its true edges, mm: the plane that stands at an end of the fold
 * cuts the round of the bend along a curve, which lies in the blank as a sine and is drawn straight. Where the
 * planes at the two leaves differ, the larger of both; at a relief, which has no true edge, nothing.
 *
 * @param rho radius of the oil-side face
 */
export const zoneChordError = (
  leaves: readonly Leaf[],
  edge: LeafEdge,
  rho: number,
  beyond: (place: RimPlace) => Beyond,
): number => {
  if (edge.angle < FLAT_TURN) return 0;
  const axis = unit3(subtract3(edge.to, edge.from));
  const intoA = cross3(axis, leaves[edge.a.leaf]!.normal);
  const intoB = cross3(leaves[edge.b.leaf]!.normal, axis);
  const across = unit3(subtract3(intoB, scale3(intoA, dot3(intoA, intoB))));
  const setback = Math.tan(edge.angle / 2);
  // The round is rho·(middle + intoA·(setback − sin t) + across·(1 − cos t)) from the corner, t from 0 to the turn.
  const errors = [-1, 1].map((end) => {
    const [onA, onB] = [beside(leaves, edge.a, end), beside(leaves, edge.b, -end)];
    const [a, b] = [beyond(onA.place), beyond(onB.place)];
    if (a.folds || b.folds) return 0;
    const both = unit3OrNull(cross3(onA.way, onB.way));
    const [atA, atB] = [a.normal ?? b.normal ?? both, b.normal ?? a.normal ?? both];
    if (atA === null || atB === null) return 0;
    const waves = [atA, atB].map((cut): Wave => {
      const lean = dot3(cut, axis);
      if (Math.abs(lean) < ALONG) return { base: 0, cosine: 0, sine: 0 };
      const [x, y] = [(-rho * dot3(cut, intoA)) / lean, (-rho * dot3(cut, across)) / lean];
      return { base: setback * x + y, cosine: -y, sine: -x };
    });
    return Math.max(
      ...waves.map((wave) => departure(wave, at(waves[0]!, 0), at(waves[1]!, edge.angle), edge.angle)),
    );
  });
  return Math.max(...errors);
};

/** Place along the fold at which a plane cuts the round, base + cosine·cos t + sine·sin t, mm. */
interface Wave {
  readonly base: number;
  readonly cosine: number;
  readonly sine: number;
}

const at = ({ base, cosine, sine }: Wave, t: number): number =>
  base + cosine * Math.cos(t) + sine * Math.sin(t);

/** Largest distance between a wave and the straight line from one value to another over 0 … turn. */
const departure = (wave: Wave, from: number, to: number, turn: number): number => {
  const slope = (to - from) / turn;
  const reach = Math.hypot(wave.cosine, wave.sine);
  if (reach === 0) return 0;
  // The derivative is reach·cos(t + lag); it equals the slope where the distance is largest.
  const lag = Math.atan2(wave.cosine, wave.sine);
  const angle = Math.acos(Math.max(-1, Math.min(1, slope / reach)));
  const places = [angle, -angle].flatMap((a) => [a - lag, a - lag + 2 * Math.PI, a - lag - 2 * Math.PI]);
  const inside = places.filter((t) => t > 0 && t < turn);
  return Math.max(...[0, turn, ...inside].map((t) => Math.abs(at(wave, t) - from - slope * t)));
};

const unit3OrNull = (v: Vec3): Vec3 | null => (Math.hypot(...v) < ALONG ? null : unit3(v));

/** The rim edge that meets a fold's start (−1) or end (+1) as its leaf runs it, and its way from there. */
const beside = (
  leaves: readonly Leaf[],
  { leaf, loop, edge }: RimPlace,
  end: number,
): { readonly place: RimPlace; readonly way: Vec3 } => {
  const points = leaves[leaf]!.loops[loop]!;
  const at = (k: number): Vec3 => points[(k + points.length) % points.length]!;
  const [corner, far, own] = end < 0 ? [edge, edge - 1, edge - 1] : [edge + 1, edge + 2, edge + 1];
  return {
    place: { leaf, loop, edge: (own + points.length) % points.length },
    way: unit3(subtract3(at(far), at(corner))),
  };
};

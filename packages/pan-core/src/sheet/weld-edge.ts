import { buttTrim } from './butt-trim.js';
import type { Leaf } from './leaf.js';
import { FLAT_TURN, type LeafEdge, type RimPlace } from './leaf-edge.js';

/**
 * How far each leaf stops short of an edge that it is welded along. At an outward corner and in one plane
 * nothing: inside edges touch. At an inward corner the metal of both would overlap, so one butts on the
 * other's outside: wings on notches, notches on belly and sides, else the steeper on the flatter.
 */
export const weldTrims = (
  leaves: readonly Leaf[],
  edge: LeafEdge,
  thickness: number,
): { readonly place: RimPlace; readonly trim: number } | null => {
  if (edge.oilInside || edge.angle < FLAT_TURN) return null;
  const trim = buttTrim(Math.PI - edge.angle, thickness);
  return { place: yields(leaves, edge) === 'a' ? edge.a : edge.b, trim };
};

const RANK: Readonly<Record<string, number>> = {
  belly: 0,
  'side left': 0,
  'side right': 0,
  notch: 1,
  wing: 2,
};

const yields = (leaves: readonly Leaf[], { a, b }: LeafEdge): 'a' | 'b' => {
  const [p, q] = [leaves[a.leaf]!, leaves[b.leaf]!];
  const [rp, rq] = [RANK[p.owner] ?? 0, RANK[q.owner] ?? 0];
  if (rp !== rq) return rp > rq ? 'a' : 'b';
  const [fp, fq] = [Math.abs(p.normal[2]), Math.abs(q.normal[2])];
  if (Math.abs(fp - fq) > 1e-6) return fp < fq ? 'a' : 'b';
  return a.leaf > b.leaf ? 'a' : 'b';
};

import { cross3, dot3, subtract3, unit3, type Vec3 } from '../numeric/index.js';
import { distance3, LEAF_TOUCH, type Leaf } from './leaf.js';

/** A place on a leaf's rim: its leaf, loop, and the edge from that corner to the next. */
export interface RimPlace {
  readonly leaf: number;
  readonly loop: number;
  readonly edge: number;
}

/** A place as a word, for looking it up. */
export const rimKey = ({ leaf, loop, edge }: RimPlace): string => `${leaf}/${loop}/${edge}`;

/** A straight edge that two leaves share. */
export interface LeafEdge {
  readonly a: RimPlace;
  readonly b: RimPlace;
  /** The edge's ends in the sense in which leaf a runs it, seen from the oil. */
  readonly from: Vec3;
  readonly to: Vec3;
  /** How far the sheet turns over the edge, radians, 0–π; 0 where both lie in one plane. */
  readonly angle: number;
  /** Whether the oil is inside the bend. */
  readonly oilInside: boolean;
}

/** Turns below this are one plane, radians. */
export const FLAT_TURN = 1e-9;

/** Every edge that two leaves share, leaves as `jointed` makes them. */
export const leafEdges = (leaves: readonly Leaf[]): readonly LeafEdge[] => {
  const rims = leaves.flatMap((leaf, i) =>
    leaf.loops.flatMap((loop, l) =>
      loop.map((from, e) => ({
        place: { leaf: i, loop: l, edge: e } as const,
        from,
        to: loop[(e + 1) % loop.length]!,
      })),
    ),
  );
  return rims.flatMap((rim, i) =>
    rims.slice(i + 1).flatMap((other): readonly LeafEdge[] => {
      if (other.place.leaf === rim.place.leaf) return [];
      if (distance3(rim.from, other.to) > LEAF_TOUCH || distance3(rim.to, other.from) > LEAF_TOUCH) return [];
      const [p, q] = [leaves[rim.place.leaf]!, leaves[other.place.leaf]!];
      return [{ a: rim.place, b: other.place, from: rim.from, to: rim.to, ...turnBetween(p, q, rim) }];
    }),
  );
};

const turnBetween = (
  p: Leaf,
  q: Leaf,
  { from, to }: { readonly from: Vec3; readonly to: Vec3 },
): Pick<LeafEdge, 'angle' | 'oilInside'> => {
  const sine = cross3(p.normal, q.normal);
  const angle = Math.atan2(Math.hypot(...sine), dot3(p.normal, q.normal));
  // Seen from the oil leaf q runs the edge the other way, so its metal lies to the right of p's edge.
  const intoQ = cross3(q.normal, unit3(subtract3(to, from)));
  const towardOil = -dot3(intoQ, p.normal);
  return { angle: angle < FLAT_TURN ? 0 : angle, oilInside: towardOil > 0 };
};

import { cross2, distance2, dot2, subtract2 } from '../geometry/index.js';
import type { Vec2 } from '../numeric/index.js';
import { type Leaf, leafFlat } from './leaf.js';
import type { LeafEdge, RimPlace } from './leaf-edge.js';
import { onBlank } from './placement.js';
import type { Blank } from './unfold.js';

interface Rim {
  readonly place: RimPlace;
  readonly from: Vec2;
  readonly to: Vec2;
}

/** Rims nearer than this lie on each other: no cutter could part them, mm. */
const NEAR = 0.01;

/**
 * Rim edges of a blank that lie along a rim of another of its leaves, so that no cut would go between them:
 * of each pair the one farther from the root.
 */
export const touchingRims = (
  leaves: readonly Leaf[],
  blank: Blank,
  folds: ReadonlySet<LeafEdge>,
): readonly RimPlace[] => {
  const foldRims = new Set([...folds].flatMap((e) => [e.a, e.b].map((p) => `${p.leaf}/${p.loop}/${p.edge}`)));
  const rims = blank.leaves.flatMap((i) =>
    leaves[i]!.loops.flatMap((loop, l) =>
      loop.flatMap((p, edge): readonly Rim[] => {
        if (foldRims.has(`${i}/${l}/${edge}`)) return [];
        const on = (q: typeof p): Vec2 => onBlank(blank.placements.get(i)!, leafFlat(leaves[i]!, q));
        return [{ place: { leaf: i, loop: l, edge }, from: on(p), to: on(loop[(edge + 1) % loop.length]!) }];
      }),
    ),
  );
  return rims.flatMap((rim, i) =>
    rims.slice(i + 1).flatMap((other) => (lieTogether(rim, other) ? [other.place] : [])),
  );
};

const lieTogether = (a: Rim, b: Rim): boolean => {
  if (a.place.leaf === b.place.leaf) return false;
  const along = subtract2(a.to, a.from);
  const length = Math.hypot(along[0], along[1]);
  const u: Vec2 = [along[0] / length, along[1] / length];
  const off = (p: Vec2): number => Math.abs(cross2(u, subtract2(p, a.from)));
  if (off(b.from) > NEAR || off(b.to) > NEAR || distance2(b.from, b.to) < NEAR) return false;
  // Rims with their metal on the same side run on from one leaf to the next and are no cut.
  if (dot2(u, subtract2(b.to, b.from)) > 0) return false;
  const [s, t] = [b.from, b.to].map((p) => dot2(u, subtract2(p, a.from))).sort((m, n) => m - n) as [
    number,
    number,
  ];
  return Math.min(t, length) - Math.max(s, 0) > 0.1;
};

import type { Blank, FlatFold, Leaf, SheetTrees } from 'pan-core/sheet/index.js';

type P2 = readonly [number, number];
type P3 = readonly [number, number, number];
/** Where a flat point of one leaf comes to lie once the blank is bent. */
type Bent = (p: P2) => P3;

const plus = (a: P3, b: P3, k = 1): P3 => [a[0] + k * b[0], a[1] + k * b[1], a[2] + k * b[2]];
const minus = (a: P3, b: P3): P3 => plus(a, b, -1);
const dot = (a: readonly number[], b: readonly number[]): number => a.reduce((s, x, i) => s + x * b[i]!, 0);
const sub2 = (a: P2, b: P2): P2 => [a[0] - b[0], a[1] - b[1]];

/**
 * Bends a blank up from its first leaf by nothing but what a drawing says: tangent lines, angle, radius and
 * sense of each fold. Written for these checks apart from the code that lays the blank flat.
 */
export const refold = (
  { leaves }: Pick<SheetTrees, 'leaves'>,
  blank: Blank,
  radius: number,
  thickness: number,
): ReadonlyMap<number, Bent> => {
  const root = leaves[blank.leaves[0]!]!;
  const oil = minus([0, 0, 0], root.normal);
  const start = frame([0, 0], root.origin, [1, 0], root.u, [0, 1], root.v);
  const out = new Map<number, { bent: Bent; oil: P3 }>([[blank.leaves[0]!, { bent: start, oil }]]);
  for (let more = true; more; ) {
    more = false;
    for (const fold of blank.folds) {
      const [a, b] = [fold.edge.a.leaf, fold.edge.b.leaf];
      if (out.has(a) === out.has(b)) continue;
      more = true;
      const forward = out.has(a);
      const parent = out.get(forward ? a : b)!;
      out.set(forward ? b : a, over(fold, forward, parent, radius, thickness));
    }
  }
  return new Map([...out].map(([i, { bent }]) => [i, bent]));
};

const frame =
  (at: P2, origin: P3, along2: P2, along: P3, across2: P2, across: P3): Bent =>
  (p) =>
    plus(plus(origin, along, dot(sub2(p, at), along2)), across, dot(sub2(p, at), across2));

const over = (
  { edge, onA, onB }: FlatFold,
  forward: boolean,
  { bent, oil }: { bent: Bent; oil: P3 },
  radius: number,
  thickness: number,
): { bent: Bent; oil: P3 } => {
  const [near, far] = forward ? [onA, onB] : [onB, onA];
  const d = sub2(near[1], near[0]);
  const length = Math.hypot(...d);
  const t2: P2 = [d[0] / length, d[1] / length];
  // Square to the fold, from the leaf that already stands into the bend.
  const side = dot(sub2(far[0], near[0]), [-t2[1], t2[0]]) >= 0 ? 1 : -1;
  const w2: P2 = edge.angle === 0 ? [-t2[1], t2[0]] : [-t2[1] * side, t2[0] * side];
  const at = bent(near[0]);
  const vector = (v: P2): P3 => minus(bent([near[0][0] + v[0], near[0][1] + v[1]]), at);
  const [t, w] = [vector(t2), vector(w2)];
  const sense = edge.oilInside ? 1 : -1;
  const rho = edge.oilInside ? radius : radius + thickness;
  const [sin, cos] = [Math.sin(edge.angle), Math.cos(edge.angle)];
  const away = plus([w[0] * cos, w[1] * cos, w[2] * cos], oil, sense * sin);
  const turned = plus([oil[0] * cos, oil[1] * cos, oil[2] * cos], w, -sense * sin);
  const beyond = plus(plus(at, w, rho * sin), oil, sense * rho * (1 - cos));
  const origin = plus(beyond, t, dot(sub2(far[0], near[0]), t2));
  return { bent: frame(far[0], origin, t2, t, w2, away), oil: turned };
};

/** Largest distance, mm, between a corner of the pan and where the bent blank brings it. */
export const closing = (
  trees: SheetTrees,
  blank: Blank,
  flat: (leaf: Leaf, p: P3) => P2,
  radius: number,
  thickness: number,
): number => {
  const bent = refold(trees, blank, radius, thickness);
  let worst = 0;
  for (const i of blank.leaves) {
    const leaf = trees.leaves[i]!;
    const { at, along } = blank.placements.get(i)!;
    for (const p of leaf.loops.flat()) {
      const [s, t] = flat(leaf, p);
      const place: P2 = [at[0] + s * along[0] - t * along[1], at[1] + s * along[1] + t * along[0]];
      const q = bent.get(i)!(place);
      worst = Math.max(worst, Math.hypot(q[0] - p[0], q[1] - p[1], q[2] - p[2]));
    }
  }
  return worst;
};

import { type NestShape, quarterTurned, type Ring } from './nest-shape.js';

type Clipper = typeof import('clipper2-ts');

/** Places where a shape may not go, as closed rings: outer edges and, inside them, edges of free pockets. */
export interface NoFit {
  readonly rings: readonly Float64Array[];
  /** xmin, ymin, xmax, ymax of all. */
  readonly box: Float64Array;
}

/** No-fit polygons of shapes in any turns. */
export type FitTable = (standing: NestShape, moving: NestShape) => NoFit;

/**
 * The no-fit polygon of two shapes: every place of the moving one's origin at which it would overlap the
 * standing one. Turning both together turns it, and letting them change places mirrors it in a point, so each
 * pair of parts is worked out once for each turn of the one against the other.
 */
export const fitTable = (clipper: Clipper): FitTable => {
  const numbers = new Map<readonly Ring[], number>();
  const numberOf = (base: readonly Ring[]): number => {
    const known = numbers.get(base) ?? numbers.size;
    numbers.set(base, known);
    return known;
  };
  const plain = new Map<string, readonly Ring[]>();
  const turned = new Map<string, NoFit>();
  /** Places q at which the moving base, turned by r and shifted by q, overlaps the standing base. */
  const between = (standing: NestShape, moving: NestShape, r: number): readonly Ring[] => {
    const [a, b] = [numberOf(standing.base), numberOf(moving.base)];
    if (a > b)
      return between(moving, standing, (4 - r) % 4).map((ring) => ring.map((p) => quarterTurned(p, r + 2)));
    const key = `${a} ${b} ${r}`;
    const known =
      plain.get(key) ??
      sweep(
        standing.base,
        moving.base.map((ring) => ring.map((p) => quarterTurned(p, r))),
        clipper,
      );
    plain.set(key, known);
    return known;
  };
  return (standing, moving) => {
    const key = `${numberOf(standing.base)} ${standing.turn} ${numberOf(moving.base)} ${moving.turn}`;
    const known = turned.get(key);
    if (known !== undefined) return known;
    const [dx, dy] = [moving.low[0] - standing.low[0], moving.low[1] - standing.low[1]];
    const rings = between(standing, moving, (4 + moving.turn - standing.turn) % 4).map((ring) =>
      flat(
        ring.map((p) => quarterTurned(p, standing.turn)),
        dx,
        dy,
      ),
    );
    const fit = { rings, box: boxOf(rings) };
    turned.set(key, fit);
    return fit;
  };
};

/**
 * What the moving outline, turned about its origin, sweeps along the standing edges, and what lies inside
 * that, less the pockets and holes that it fits into whole.
 */
const sweep = (standing: readonly Ring[], moving: readonly Ring[], clipper: Clipper): readonly Ring[] => {
  const outer = moving[0] ?? [];
  const first = standing[0] ?? [];
  if (standing.length === 1 && isConvex(first) && isConvex(outer)) return [convexSum(first, outer)];
  const swept = clipper.union(
    standing.flatMap((ring) => clipper.minkowskiDiff([...outer], [...ring], true)),
    clipper.FillRule.NonZero,
  );
  const kept = swept.filter((ring) => clipper.isPositive(ring) || !overlaps(standing, outer, swept, ring));
  // What lay inside a filled pocket is covered by now, and may not count as free by the even–odd rule.
  return kept.length === swept.length ? kept : clipper.union(kept, clipper.FillRule.NonZero);
};

const isConvex = (ring: Ring): boolean =>
  ring.every((q, i) => {
    const [p, r] = [ring[(i + ring.length - 1) % ring.length]!, ring[(i + 1) % ring.length]!];
    return (q.x - p.x) * (r.y - q.y) - (q.y - p.y) * (r.x - q.x) >= 0;
  });

/** Minkowski sum of a convex ring and another turned half round: their edges in the order of their directions. */
const convexSum = (standing: Ring, moving: Ring): Ring => {
  const a = fromLowest(standing);
  const b = fromLowest(moving.map(({ x, y }) => ({ x: -x, y: -y })));
  const sum: { x: number; y: number }[] = [];
  for (let i = 0, j = 0; i < a.length || j < b.length; ) {
    sum.push({ x: a[i % a.length]!.x + b[j % b.length]!.x, y: a[i % a.length]!.y + b[j % b.length]!.y });
    const [p, q] = [a[i % a.length]!, a[(i + 1) % a.length]!];
    const [u, v] = [b[j % b.length]!, b[(j + 1) % b.length]!];
    const turn = (q.x - p.x) * (v.y - u.y) - (q.y - p.y) * (v.x - u.x);
    const [ahead, behind] = [turn >= 0 && i < a.length, turn <= 0 && j < b.length];
    if (ahead || j >= b.length) i++;
    if (behind || (!ahead && i >= a.length)) j++;
  }
  return sum;
};

/** The ring from its lowest corner on, the leftmost of those. */
const fromLowest = (ring: Ring): Ring => {
  let low = 0;
  ring.forEach((p, i) => {
    const q = ring[low]!;
    if (p.y < q.y || (p.y === q.y && p.x < q.x)) low = i;
  });
  return [...ring.slice(low), ...ring.slice(0, low)];
};

/** Whether the moving outline, standing anywhere in a pocket of the sweep, covers metal. */
const overlaps = (standing: readonly Ring[], moving: Ring, swept: readonly Ring[], pocket: Ring): boolean => {
  const within = swept.filter((ring) => ring !== pocket && contains(pocket, ring[0]!.x, ring[0]!.y));
  const at = insidePoint(pocket, within);
  const [first, corner] = [standing[0]?.[0], moving[0]];
  if (at === null || first === undefined || corner === undefined) return true;
  const inMetal = standing.reduce(
    (odd, ring) => odd !== contains(ring, corner.x + at.x, corner.y + at.y),
    false,
  );
  return inMetal || contains(moving, first.x - at.x, first.y - at.y);
};

/** Even–odd rule: counts edges to the right. */
const contains = (ring: Ring, x: number, y: number): boolean => {
  let odd = false;
  for (let i = 0, j = ring.length - 1; i < ring.length; j = i++) {
    const [p, q] = [ring[i]!, ring[j]!];
    if (p.y > y !== q.y > y && x < p.x + ((y - p.y) * (q.x - p.x)) / (q.y - p.y)) odd = !odd;
  }
  return odd;
};

/**
 * A point well inside a ring and outside those within it: the middle of the widest such span, half-way up
 * between two of their corners.
 */
const insidePoint = (
  ring: Ring,
  within: readonly Ring[],
): { readonly x: number; readonly y: number } | null => {
  const all = [ring, ...within];
  const ys = [...new Set(all.flatMap((one) => one.map((p) => p.y)))].sort((a, b) => a - b);
  let best: { x: number; y: number; width: number } | null = null;
  for (let k = 0; k + 1 < ys.length; k++) {
    const y = (ys[k]! + ys[k + 1]!) / 2;
    const xs: number[] = [];
    for (const one of all)
      for (let i = 0, j = one.length - 1; i < one.length; j = i++) {
        const [p, q] = [one[i]!, one[j]!];
        if (p.y > y !== q.y > y) xs.push(p.x + ((y - p.y) * (q.x - p.x)) / (q.y - p.y));
      }
    xs.sort((a, b) => a - b);
    for (let i = 0; i + 1 < xs.length; i++) {
      const [x, width] = [(xs[i]! + xs[i + 1]!) / 2, xs[i + 1]! - xs[i]!];
      if (
        (best === null || width > best.width) &&
        contains(ring, x, y) &&
        !within.some((one) => contains(one, x, y))
      )
        best = { x, y, width };
    }
  }
  return best;
};

const flat = (ring: Ring, dx: number, dy: number): Float64Array =>
  Float64Array.from(ring.flatMap((p) => [p.x + dx, p.y + dy]));

const boxOf = (rings: readonly Float64Array[]): Float64Array => {
  const box = Float64Array.of(Infinity, Infinity, -Infinity, -Infinity);
  for (const ring of rings)
    for (let i = 0; i < ring.length; i += 2) {
      box[0] = Math.min(box[0]!, ring[i]!);
      box[1] = Math.min(box[1]!, ring[i + 1]!);
      box[2] = Math.max(box[2]!, ring[i]!);
      box[3] = Math.max(box[3]!, ring[i + 1]!);
    }
  return box;
};

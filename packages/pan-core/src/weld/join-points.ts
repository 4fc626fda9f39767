import { areaVector } from '../geometry/index.js';
import { dot3, length3, subtract3, type Vec3 } from '../numeric/index.js';

/** Points nearer than this are one point, mm: far above rounding, far below anything that can be made. */
const SAME = 1e-6;

/**
 * Makes loops share their points: near points become one, and a point that lies on another loop's edge
 * is put into that edge, so that every edge has one equal and opposite partner.
 *
 * @returns the distinct points, and each loop as places among them; a loop that is no wider than a point
 * comes back empty, since the edges round it meet without it
 */
export const joinPoints = (
  loops: readonly (readonly Vec3[])[],
): { readonly points: readonly Vec3[]; readonly loops: readonly (readonly number[])[] } => {
  const { points, places } = mergePoints(loops.map((loop) => (isThin(loop) ? [] : loop)));
  const order = points.map((_, i) => i).sort((a, b) => points[a]![0] - points[b]![0]);
  const xs = order.map((i) => points[i]![0]);
  const between = (a: number, b: number): readonly number[] => {
    const [p, q] = [points[a] as Vec3, points[b] as Vec3];
    const along = subtract3(q, p);
    const length = length3(along);
    const [low, high] = [Math.min(p[0], q[0]) - SAME, Math.max(p[0], q[0]) + SAME];
    const on: { place: number; t: number }[] = [];
    for (let k = firstAtLeast(xs, low); k < xs.length && xs[k]! <= high; k++) {
      const place = order[k]!;
      if (place === a || place === b) continue;
      const at = points[place] as Vec3;
      if (outside(at[1], p[1], q[1]) || outside(at[2], p[2], q[2])) continue;
      const r = subtract3(at, p);
      const t = dot3(r, along) / length;
      if (t <= SAME || t >= length - SAME) continue;
      const off = length3([
        r[0] - (along[0] * t) / length,
        r[1] - (along[1] * t) / length,
        r[2] - (along[2] * t) / length,
      ]);
      if (off < SAME) on.push({ place, t });
    }
    return on.sort((m, n) => m.t - n.t).map((m) => m.place);
  };
  const split = places.map((loop) =>
    loop.flatMap((a, i) => [a, ...between(a, loop[(i + 1) % loop.length] as number)]),
  );
  return { points, loops: split };
};

const outside = (v: number, a: number, b: number): boolean =>
  v < Math.min(a, b) - SAME || v > Math.max(a, b) + SAME;

/** Twice the area over the longest edge is the height of a triangle, and a measure of width for the rest. */
const isThin = (loop: readonly Vec3[]): boolean => {
  const longest = Math.max(
    0,
    ...loop.map((p, i) => length3(subtract3(loop[(i + 1) % loop.length] as Vec3, p))),
  );
  return loop.length < 3 || 2 * length3(areaVector(loop)) < SAME * longest;
};

const firstAtLeast = (sorted: readonly number[], value: number): number => {
  let [low, high] = [0, sorted.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (sorted[middle]! < value) low = middle + 1;
    else high = middle;
  }
  return low;
};

const inner = <T>(map: Map<number, Map<number, T>>, key: number): Map<number, T> => {
  const found = map.get(key) ?? new Map<number, T>();
  map.set(key, found);
  return found;
};

const mergePoints = (loops: readonly (readonly Vec3[])[]): { points: Vec3[]; places: number[][] } => {
  const points: Vec3[] = [];
  const boxes = new Map<string, number[]>();
  // Boxes a little larger than the tolerance, so that a near point is in the same box or the next.
  const size = 4 * SAME;
  const box = (v: number): number => Math.floor(v / size);
  // Most points repeat digit for digit, and need no search.
  const known = new Map<number, Map<number, Map<number, number>>>();
  const placeOf = (p: Vec3): number => {
    const column = inner(inner(known, p[0]), p[1]);
    const place = column.get(p[2]) ?? searched(p);
    column.set(p[2], place);
    return place;
  };
  const searched = (p: Vec3): number => {
    const [x, y, z] = [box(p[0]), box(p[1]), box(p[2])];
    for (const dx of [0, -1, 1])
      for (const dy of [0, -1, 1])
        for (const dz of [0, -1, 1]) {
          for (const place of boxes.get(`${x + dx} ${y + dy} ${z + dz}`) ?? []) {
            if (length3(subtract3(points[place] as Vec3, p)) < SAME) return place;
          }
        }
    points.push(p);
    const key = `${x} ${y} ${z}`;
    boxes.set(key, [...(boxes.get(key) ?? []), points.length - 1]);
    return points.length - 1;
  };
  const places = loops.map((loop) => {
    const all = loop.map(placeOf);
    const distinct = all.filter((place, i) => place !== all[(i + 1) % all.length]);
    return distinct.length < 3 ? [] : distinct;
  });
  return { points, places };
};

import type { Design, Wing } from 'pan-core/design/index.js';

export type Point = readonly [number, number, number];
/** The corners of a convex solid. */
export type Corners = readonly Point[];

type Row = readonly [number, number];

const along = (rows: readonly Row[], x: number): number => {
  const sorted = [...rows].sort((a, b) => a[0] - b[0]);
  const first = sorted[0]!;
  const last = sorted[sorted.length - 1]!;
  if (x <= first[0]) return first[1];
  if (x >= last[0]) return last[1];
  const i = sorted.findIndex((row) => row[0] > x);
  const [a, b] = [sorted[i - 1]!, sorted[i]!];
  return a[1] + ((b[1] - a[1]) * (x - a[0])) / (b[0] - a[0]);
};

/** mm: a piece of floor no longer than this is a shoulder, upright but for rounding. */
const THIN = 1e-9;

/** The pan below the rail as convex solids that touch and never overlap, from a floor line front to rear. */
export const solidsOf = ({ pan }: Design, floor: readonly Row[]): readonly Corners[] => {
  const stations = [
    ...pan.left,
    ...pan.right,
    ...pan.wings.flatMap((w): Row[] => [
      [w.rear, 0],
      [w.front, 0],
    ]),
  ].map(([x]) => x);
  return floor.slice(1).flatMap((rear, i): Corners[] => {
    const front = floor[i]!;
    if (front[0] - rear[0] < THIN) return [];
    const inner = [...new Set(stations)]
      .filter((x) => x > rear[0] + THIN && x < front[0] - THIN)
      .sort((a, b) => a - b);
    const ends = [rear[0], ...inner, front[0]];
    const down = (x: number): number =>
      rear[1] + ((front[1] - rear[1]) * (x - rear[0])) / (front[0] - rear[0]);
    return ends.slice(1).flatMap((x1, k) => {
      const x0 = ends[k]!;
      const slab = [x0, x1].flatMap((x): Point[] => [
        [x, -along(pan.right, x), 0],
        [x, along(pan.left, x), 0],
        [x, along(pan.left, x), -down(x)],
        [x, -along(pan.right, x), -down(x)],
      ]);
      const wings = pan.wings.filter((wing) => wing.rear <= x0 && x1 <= wing.front);
      return [slab, ...wings.map((wing) => wingPiece(pan, wing, x0, x1, down))];
    });
  });
};

/** A wing between two stations: from the wall to its outer plane, from the floor to its top plane. */
const wingPiece = (
  pan: Design['pan'],
  wing: Wing,
  x0: number,
  x1: number,
  down: (x: number) => number,
): Corners => {
  const rows = wing.side === 'left' ? pan.left : pan.right;
  const sign = wing.side === 'left' ? 1 : -1;
  const wall = (x: number): number => along(rows, x);
  const share = (x: number): number => (x - wing.rear) / (wing.front - wing.rear);
  const mix = (a: number, b: number, t: number): number => a + (b - a) * t;
  const outer = (x: number): number =>
    mix(wall(wing.rear) + wing.beyondWall.rear, wall(wing.front) + wing.beyondWall.front, share(x));
  // The top is told at the wall's two ends and falls outward from the straight line between them.
  const top = (x: number, y: number): number =>
    mix(wing.topDown.rear, wing.topDown.front, share(x)) +
    Math.tan(wing.topFall) * (y - mix(wall(wing.rear), wall(wing.front), share(x)));
  return [x0, x1].flatMap((x) =>
    [wall(x), outer(x)].flatMap((y): Point[] => [
      [x, sign * y, -down(x)],
      [x, sign * y, -top(x, y)],
    ]),
  );
};

/** The floor line as drawn, front to rear. */
export const sharpLine = ({ pan }: Design): readonly Row[] => pan.floor.map(([x, down]): Row => [x, down]);

/** Arcs of folds as chords this near to them, mm: far nearer than the library's own. */
const CHORD = 1e-3;

/**
 * The floor line with every fold as an arc of the oil's side: the sheet's radius where the oil lies inside the
 * bend, that and the sheet's thickness where it lies outside.
 */
export const formedLine = ({ pan }: Design): readonly Row[] => {
  const first = pan.floor[0]!;
  const last = pan.floor[pan.floor.length - 1]!;
  const sharp: Row[] = [[first[0], 0], ...pan.floor.map(([x, down]): Row => [x, down]), [last[0], 0]];
  return pan.floor.flatMap((at, i): Row[] => {
    if (pan.joints.welded.includes(i)) return [[at[0], at[1]]];
    return fillet(sharp[i]!, sharp[i + 1]!, sharp[i + 2]!, pan.sheet.bendRadius, pan.sheet.thickness);
  });
};

const fillet = (before: Row, at: Row, after: Row, radius: number, thickness: number): Row[] => {
  const unit = (to: Row): Row => {
    const size = Math.hypot(to[0] - at[0], to[1] - at[1]);
    return [(to[0] - at[0]) / size, (to[1] - at[1]) / size];
  };
  const [u, v] = [unit(before), unit(after)];
  const cross = u[0] * v[1] - u[1] * v[0];
  if (Math.abs(cross) < 1e-12) return [[at[0], at[1]]];
  const half = Math.acos(u[0] * v[0] + u[1] * v[1]) / 2;
  // Depth counts down, so from front to rear a corner with the oil inside it turns this way.
  const bend = cross < 0 ? radius : radius + thickness;
  const reach = bend / Math.tan(half);
  const away = bend / Math.sin(half) / Math.hypot(u[0] + v[0], u[1] + v[1]);
  const middle: Row = [at[0] + (u[0] + v[0]) * away, at[1] + (u[1] + v[1]) * away];
  const angle = (way: Row): number =>
    Math.atan2(at[1] + way[1] * reach - middle[1], at[0] + way[0] * reach - middle[0]);
  const first = angle(u);
  let sweep = angle(v) - first;
  if (sweep > Math.PI) sweep -= 2 * Math.PI;
  if (sweep < -Math.PI) sweep += 2 * Math.PI;
  const count = Math.ceil(Math.abs(sweep) / (2 * Math.acos(1 - CHORD / bend)));
  return Array.from({ length: count + 1 }, (_, k): Row => {
    const turned = first + (sweep * k) / count;
    return [middle[0] + bend * Math.cos(turned), middle[1] + bend * Math.sin(turned)];
  });
};

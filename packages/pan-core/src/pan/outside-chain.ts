import type { Vec2 } from '../numeric/index.js';
import type { OutsideLine } from './outside-profile.js';

/** A stretch of the outside line that bulges outward only: with the rail plane above it, it bounds a convex area. */
export interface Chain {
  readonly points: readonly Vec2[];
  readonly names: readonly string[];
}

/** Turns less than this are straight on, sine. */
const STRAIGHT = 1e-12;

/** Cuts the line at its inward corners and at every station, front to rear. */
export const convexChains = (line: OutsideLine, stations: readonly number[]): readonly Chain[] => {
  const { points, names } = withStations(line, stations);
  const at = new Set(stations);
  const cuts = [0];
  for (let i = 1; i + 1 < points.length; i++) {
    const station = at.has(points[i]![0]) && points[i - 1]![0] > points[i]![0];
    if (station || turnsInward(points[i - 1]!, points[i]!, points[i + 1]!)) cuts.push(i);
  }
  cuts.push(points.length - 1);
  return cuts.slice(1).flatMap((end, k) => {
    const begin = cuts[k]!;
    if (points[begin]![0] - points[end]![0] < 1e-9) return [];
    return [{ points: points.slice(begin, end + 1), names: names.slice(begin, end) }];
  });
};

const turnsInward = (a: Vec2, b: Vec2, c: Vec2): boolean => {
  const [ux, uz, vx, vz] = [b[0] - a[0], b[1] - a[1], c[0] - b[0], c[1] - b[1]];
  return ux * vz - uz * vx > STRAIGHT * Math.hypot(ux, uz) * Math.hypot(vx, vz);
};

const withStations = (line: OutsideLine, stations: readonly number[]): OutsideLine => {
  const points: Vec2[] = [line.points[0]!];
  const names: string[] = [];
  line.points.slice(1).forEach((b, i) => {
    const a = line.points[i]!;
    const between = [...new Set(stations)].filter((x) => x < a[0] && x > b[0]).sort((p, q) => q - p);
    for (const x of between) {
      points.push([x, a[1] + ((b[1] - a[1]) * (x - a[0])) / (b[0] - a[0])]);
      names.push(line.names[i]!);
    }
    points.push(b);
    names.push(line.names[i]!);
  });
  return { points, names };
};

/** Height of the outside line at x; at a step the lower of its two ends. 0 past the ends. */
export const outsideHeight = (line: OutsideLine, x: number): number => {
  let low = 0;
  line.points.slice(1).forEach((b, i) => {
    const a = line.points[i]!;
    if (x > a[0] || x < b[0]) return;
    const z = a[0] === b[0] ? Math.min(a[1], b[1]) : a[1] + ((b[1] - a[1]) * (x - a[0])) / (b[0] - a[0]);
    low = Math.min(low, z);
  });
  return low;
};

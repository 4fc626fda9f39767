import type { Design } from '../design/index.js';
import type { Vec2, Vec3 } from '../numeric/index.js';
import { convexParts, halfWidthAt, type OutsideLine, type Plate } from '../pan/index.js';
import { BEHIND_FACE, type BodySolid } from './body.js';
import { prism } from './prism.js';

/**
 * What lies behind the pan's inside faces, as solids: straight down from floors, straight out from walls.
 *
 * @param behind How thick it is taken to be, mm.
 */
export const behindInside = (design: Design, line: OutsideLine, behind: number): readonly BodySolid[] => {
  const { left, right, floor } = design.pan;
  const [front, rear] = [floor[0]![0], floor[floor.length - 1]![0]];
  const stations = [...left, ...right].map((r) => r[0]).filter((x) => x > rear && x < front);
  const low = Math.min(...line.points.map((p) => p[1]));
  const across = (a: Vec2, b: Vec2): readonly Vec3[] => [
    [a[0], -halfWidthAt(right, a[0]), a[1]],
    [b[0], -halfWidthAt(right, b[0]), b[1]],
    [b[0], halfWidthAt(left, b[0]), b[1]],
    [a[0], halfWidthAt(left, a[0]), a[1]],
  ];
  const floors = line.points.slice(1).flatMap((b, i): readonly BodySolid[] => {
    const a = line.points[i]!;
    const name = line.names[i]!;
    if (a[0] - b[0] < 1e-9) {
      // A wall that goes down towards the rear has the oil behind it and the metal ahead.
      const out = a[1] > b[1] ? behind : -behind;
      return [oriented(name, across(a, b), [out, 0, 0])];
    }
    const cuts = stations.filter((x) => x < a[0] && x > b[0]).sort((p, q) => q - p);
    const ends = [a[0], ...cuts, b[0]];
    const z = (x: number): number => a[1] + ((b[1] - a[1]) * (x - a[0])) / (b[0] - a[0]);
    return ends
      .slice(1)
      .map((x, k) => oriented(name, across([ends[k]!, z(ends[k]!)], [x, z(x)]), [0, 0, -behind]));
  });
  const xs = [rear, ...[...stations].sort((p, q) => p - q), front];
  const sides = ([1, -1] as const).flatMap((sign) => {
    const rows = sign > 0 ? left : right;
    return xs.slice(1).map((x1, i) => {
      const x0 = xs[i]!;
      const [y0, y1] = [sign * halfWidthAt(rows, x0), sign * halfWidthAt(rows, x1)];
      const wall: readonly Vec3[] = [
        [x0, y0, low],
        [x1, y1, low],
        [x1, y1, 0],
        [x0, y0, 0],
      ];
      return oriented(sign > 0 ? 'left side' : 'right side', wall, [0, sign * behind, 0]);
    });
  });
  return [...floors, ...sides];
};

/** A baffle's plate as convex solids. */
export const plateSolids = (plate: Plate): readonly BodySolid[] =>
  plate.outlines.flatMap((outline) =>
    convexParts(outline).map((part) => {
      const base = part.map(([s, t]): Vec3 => {
        const at = (k: 0 | 1 | 2): number => plate.origin[k] + s * plate.u[k] + t * plate.v[k];
        return [at(0), at(1), at(2)];
      });
      const { normal, baffle } = plate;
      const up: Vec3 = [
        normal[0] * baffle.thickness,
        normal[1] * baffle.thickness,
        normal[2] * baffle.thickness,
      ];
      return oriented(baffle.name, base, up, baffle.name);
    }),
  );

/** A prism whose base may run either way. */
const oriented = (name: string, base: readonly Vec3[], sweep: Vec3, others = BEHIND_FACE): BodySolid => {
  const [a, b, c] = [base[0]!, base[1]!, base[2]!];
  const [u, v] = [
    [b[0] - a[0], b[1] - a[1], b[2] - a[2]] as const,
    [c[0] - a[0], c[1] - a[1], c[2] - a[2]] as const,
  ];
  const facing =
    (u[1] * v[2] - u[2] * v[1]) * sweep[0] +
    (u[2] * v[0] - u[0] * v[2]) * sweep[1] +
    (u[0] * v[1] - u[1] * v[0]) * sweep[2];
  return prism(name, facing >= 0 ? base : [...base].reverse(), sweep, others);
};

import { boundsOf, type FlatSegment, sliceLoops } from '../../geometry/index.js';
import { freeze, type Vec2, type Vec3 } from '../../numeric/index.js';
import type { Mesh } from './mesh.js';
import { type Axis, cleanPlace, cutMesh, othersOf, type PinHole } from './mesh-cut.js';

/** A piece of the mock-up that a printer can hold. */
export interface MockUpPiece {
  readonly name: string;
  readonly mesh: Mesh;
  /** Lowest and highest corner, pan axes, mm. */
  readonly low: Vec3;
  readonly high: Vec3;
  /** Pins in its cut faces. */
  readonly pins: number;
}

/** What pins are made of and how they are set: offcuts of common filament, 1.75 mm; common practice, no source. */
export const PIN = Object.freeze({ radius: 0.95, depth: 7, wall: 0.8, most: 6, apart: 35 });

/**
 * A hollow pan in pieces no larger than a printer's bed, each closed, cut square to x, then y, then z, with holes
 * for pins in both faces of every cut.
 *
 * @param bed length, width and height that can be printed, mm
 * @param wall of the mesh, mm: pins stand in its middle
 */
export const mockUpPieces = (whole: Mesh, bed: Vec3, wall: number): readonly MockUpPiece[] => {
  const cuts = AXES.map((axis) => cutsAcross(whole, axis, bed[axis]));
  const pieces = AXES.reduce<readonly Loose[]>(
    (all, axis) => all.flatMap((piece) => slicedAcross(piece, axis, cuts, wall)),
    [{ mesh: whole, pins: [] }],
  );
  return freeze(
    pieces.map(({ mesh, pins }, i) => ({
      name: `piece ${i + 1}`,
      mesh,
      ...boundsOf(mesh.points),
      pins: pins.length,
    })),
  );
};

/** A piece that may be cut again, with where its pins stand in its cut faces. */
interface Loose {
  readonly mesh: Mesh;
  readonly pins: readonly Vec3[];
}

const AXES = [0, 1, 2] as const;

/** Even shares of the length that fit the bed. */
const cutsAcross = (mesh: Mesh, axis: Axis, room: number): readonly number[] => {
  const { low, high } = boundsOf(mesh.points);
  const length = high[axis] - low[axis];
  // Cuts are moved by less than this to pass through no corner.
  const count = Math.max(1, Math.ceil(length / (room - 0.5)));
  return Array.from({ length: count - 1 }, (_, k) =>
    cleanPlace(mesh, axis, low[axis] + (length * (k + 1)) / count),
  );
};

const slicedAcross = (
  piece: Loose,
  axis: Axis,
  cuts: readonly (readonly number[])[],
  wall: number,
): Loose[] => {
  const out: Loose[] = [];
  let rest = piece;
  for (const at of cuts[axis] as readonly number[]) {
    const { low, high } = boundsOf(rest.mesh.points);
    if (at <= low[axis] || at >= high[axis]) continue;
    // Pins keep clear of the cuts that cross this one.
    const [u, v] = othersOf(axis).map((k) => cuts[k]) as [readonly number[], readonly number[]];
    const pins = pinHoles(rest.mesh, axis, at, wall).filter(
      ({ at: [a, b] }) =>
        u.every((cut) => Math.abs(cut - a) > PIN.depth) && v.every((cut) => Math.abs(cut - b) > PIN.depth),
    );
    const [below, above] = cutMesh(rest.mesh, axis, at, pins);
    const made = pins.map((pin) => pinPlace(pin, axis, at));
    out.push({ mesh: below, pins: [...rest.pins.filter((p) => p[axis] < at), ...made] });
    rest = { mesh: above, pins: [...rest.pins.filter((p) => p[axis] > at), ...made] };
  }
  return [...out, rest];
};

const pinPlace = ({ at: [a, b] }: PinHole, axis: Axis, height: number): Vec3 => {
  const [u, v] = othersOf(axis);
  const place: [number, number, number] = [height, height, height];
  place[u] = a;
  place[v] = b;
  return place;
};

/** The lines in which a plane square to an axis cuts a mesh, in the two axes that follow. */
const sectionOf = ({ points, triangles }: Mesh, axis: Axis, at: number): readonly FlatSegment[] => {
  const [u, v] = othersOf(axis);
  const along = (k: Axis, length: number): Vec3 =>
    [0, 1, 2].map((i) => (i === k ? length : 0)) as unknown as Vec3;
  const plane = { at: along(axis, at), right: along(u, 1), upward: along(v, 1) };
  return triangles.flatMap((triangle) => sliceLoops([triangle.map((place) => points[place] as Vec3)], plane));
};

/** How deep a point lies in the material of a section; negative outside. */
const depthIn = (section: readonly FlatSegment[], [x, y]: Vec2): number => {
  let [inside, nearest] = [false, Number.POSITIVE_INFINITY];
  for (const [a, b] of section) {
    const d: Vec2 = [b[0] - a[0], b[1] - a[1]];
    const size = d[0] * d[0] + d[1] * d[1];
    const t = size === 0 ? 0 : Math.max(0, Math.min(1, ((x - a[0]) * d[0] + (y - a[1]) * d[1]) / size));
    nearest = Math.min(nearest, Math.hypot(x - a[0] - t * d[0], y - a[1] - t * d[1]));
    if (a[1] > y !== b[1] > y && x < a[0] + ((y - a[1]) / (b[1] - a[1])) * d[0]) inside = !inside;
  }
  return inside ? nearest : -nearest;
};

/** Pins in the middle of the wall, well apart, where the wall goes on straight enough on both sides of the cut. */
const pinHoles = (mesh: Mesh, axis: Axis, at: number, wall: number): readonly PinHole[] => {
  const need = PIN.radius + PIN.wall;
  const here = sectionOf(mesh, axis, at);
  const beside = [-1, -0.5, 0.5, 1].map((share) => sectionOf(mesh, axis, at + share * (PIN.depth + 0.5)));
  const holds = (p: Vec2): boolean =>
    depthIn(here, p) >= need && beside.every((section) => depthIn(section, p) >= need);
  const candidates = here.flatMap(([a, b]) => {
    const d: Vec2 = [b[0] - a[0], b[1] - a[1]];
    const length = Math.hypot(...d);
    if (length < 1e-6) return [];
    const shares = Array.from({ length: Math.ceil(length / 5) }, (_, i) => (i + 0.5) / Math.ceil(length / 5));
    return shares.flatMap((t) =>
      [-1, 1].map(
        (way): Vec2 => [
          a[0] + t * d[0] - (way * wall * d[1]) / length / 2,
          a[1] + t * d[1] + (way * wall * d[0]) / length / 2,
        ],
      ),
    );
  });
  const chosen: Vec2[] = [];
  const good = candidates.filter(holds);
  while (chosen.length < PIN.most) {
    const away = good.map((p) => Math.min(1e9, ...chosen.map((q) => Math.hypot(p[0] - q[0], p[1] - q[1]))));
    const most = Math.max(0, ...away);
    const next = good[away.indexOf(most)];
    if (next === undefined || most < PIN.apart) break;
    chosen.push(next);
  }
  return chosen.map((p) => ({ at: p, radius: PIN.radius, depth: PIN.depth }));
};

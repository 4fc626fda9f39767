import type { Baffle, Design, Lid, Wall } from '../design/index.js';
import { PanError, type Problem } from '../errors/index.js';
import {
  circlePolygon,
  flatAxes,
  type PlaneTable,
  type Polygon,
  planeThrough,
  rectangle,
} from '../geometry/index.js';
import type { Vec2, Vec3 } from '../numeric/index.js';
import { cutFloor, depthAt, type FloorPiece } from './floor-line.js';
import { type LouvreCut, lidOpenings, type SlotCut } from './lid-opening.js';

/** What a passage through a baffle is. Weeps and doors are tight in the held state; holes never are. */
export type PassageKind = 'hole' | 'door' | 'weep';

/** A way for oil through a baffle. */
export interface Passage {
  readonly kind: PassageKind;
  readonly polygon: Polygon;
  /** Doors: the direction along the plane's normal in which oil may pass. */
  readonly way: 1 | -1 | 0;
  readonly label: string;
  /** As cut, where that is neither round nor a plain box. */
  readonly cut?: SlotCut | LouvreCut;
}

/** A baffle as it blocks the oil: convex areas on its plane and the passages through them, in flat axes. */
export interface Barrier {
  readonly baffle: Baffle;
  readonly index: number;
  readonly plane: number;
  readonly covers: readonly Polygon[];
  readonly passages: readonly Passage[];
  /** Depth of its highest edge. */
  readonly top: number;
  /** Side of the plane on which its thickness lies. */
  readonly thicknessSide: 1 | -1;
}

const FAR = 1e4;

/** Every baffle of the design as a barrier. @throws PanError `shape-baffle` for one outside the pan. */
export const barriers = (
  table: PlaneTable,
  design: Design,
  floor: readonly FloorPiece[],
  stepDepth: number,
): readonly Barrier[] =>
  design.baffles.map((baffle, index) => {
    refuseOutside(baffle, index, floor);
    return baffle.kind === 'lid'
      ? lidBarrier(table, design, baffle, index)
      : wallBarrier(table, baffle, index, floor, wallTop(design, baffle, stepDepth));
  });

/** Depth of a wall's top edge: as given, else the lowest lid over it, else the step's depth. */
export const wallTop = (design: Design, wall: Wall, stepDepth: number): number => {
  if (wall.topDown !== null) return wall.topDown;
  const over = design.baffles.filter(
    (b): b is Lid =>
      b.kind === 'lid' &&
      b.tray === undefined &&
      (wall.run === 'across'
        ? b.rear <= wall.at && wall.at <= b.front
        : (b.span === null || (b.span[0] <= wall.at && wall.at <= b.span[1])) &&
          (wall.span === null || (b.rear < wall.span[1] && wall.span[0] < b.front))),
  );
  return over.length > 0 ? Math.max(...over.map((lid) => lid.down)) : stepDepth;
};

/** A box between two x and two y (or a depth and a place) as a polygon of the plane's flat axes. */
const flatten = (normal: Vec3, points: readonly Vec3[]): Polygon => {
  const { u, v } = flatAxes(normal);
  return points.map((p): Vec2 => [p[u], p[v]]);
};

/** Makes any convex polygon counter-clockwise. */
const turned = (p: Polygon): Polygon => {
  let twice = 0;
  p.forEach((a, i) => {
    const b = p[(i + 1) % p.length] as Vec2;
    twice += a[0] * b[1] - b[0] * a[1];
  });
  return twice < 0 ? [...p].reverse() : p;
};

const lidBarrier = (table: PlaneTable, design: Design, lid: Lid, index: number): Barrier => {
  const { plane, side } = planeThrough(table, [0, 0, 1], [0, 0, -lid.down]);
  const [y0, y1] = lid.span ?? [-FAR, FAR];
  return {
    baffle: lid,
    index,
    plane,
    top: lid.down,
    covers: [rectangle(lid.rear, lid.front, y0, y1)],
    passages: [
      ...lid.holes.map(
        (hole, i): Passage => ({
          kind: 'hole',
          polygon: holePolygon(hole.at, hole.size),
          way: 0,
          label: `hole ${i + 1} in ${lid.name}`,
        }),
      ),
      ...lidOpenings(design, lid).map((opening): Passage => ({ kind: 'hole', way: 0, ...opening })),
    ],
    thicknessSide: side,
  };
};

const holePolygon = (at: Vec2, size: number | readonly [number, number]): Polygon =>
  typeof size === 'number'
    ? circlePolygon(at, size)
    : rectangle(at[0] - size[0] / 2, at[0] + size[0] / 2, at[1] - size[1] / 2, at[1] + size[1] / 2);

const wallBarrier = (
  table: PlaneTable,
  wall: Wall,
  index: number,
  floor: readonly FloorPiece[],
  top: number,
): Barrier => {
  const across = wall.run === 'across';
  const normal: Vec3 = across ? [1, 0, 0] : [0, 1, 0];
  const { plane, side } = planeThrough(table, normal, across ? [wall.at, 0, 0] : [0, wall.at, 0]);
  const put = (s: number, z: number): Vec3 => (across ? [wall.at, s, z] : [s, wall.at, z]);
  const flat = (points: readonly (readonly [number, number])[]): Polygon =>
    turned(
      flatten(
        normal,
        points.map(([s, z]) => put(s, z)),
      ),
    );
  const runs = across ? acrossRuns(wall, floor) : alongRuns(wall, floor);
  const covers = runs
    .filter((r) => r.down0 > top || r.down1 > top)
    .map((r) =>
      flat([
        [r.s0, -FAR],
        [r.s1, -FAR],
        [r.s1, -top],
        [r.s0, -top],
      ]),
    );
  const weeps =
    wall.weep <= 0
      ? []
      : runs.map(
          (r): Passage => ({
            kind: 'weep',
            polygon: flat([
              [r.s0, -r.down0],
              [r.s1, -r.down1],
              [r.s1, -r.down1 + wall.weep],
              [r.s0, -r.down0 + wall.weep],
            ]),
            way: 0,
            label: `weep under ${wall.name}`,
          }),
        );
  const doors = wall.doors.map((door, i): Passage => {
    const [w, h] = door.size;
    const foot = -(depthAt(floor, across ? wall.at : door.at) ?? 0) + door.up;
    const way = { rearward: -1, forward: 1, left: 1, right: -1 }[door.letsOil] as 1 | -1;
    return {
      kind: 'door',
      polygon: flat([
        [door.at - w / 2, foot],
        [door.at + w / 2, foot],
        [door.at + w / 2, foot + h],
        [door.at - w / 2, foot + h],
      ]),
      way,
      label: `door ${i + 1} in ${wall.name}`,
    };
  });
  const holes = wall.holes.map(
    (hole, i): Passage => ({
      kind: 'hole',
      polygon: turned(
        flatten(
          normal,
          holePolygon([hole.at[0], -hole.at[1]], hole.size).map(([s, z]) => put(s, z)),
        ),
      ),
      way: 0,
      label: `hole ${i + 1} in ${wall.name}`,
    }),
  );
  return {
    baffle: wall,
    index,
    plane,
    top,
    covers,
    passages: [...weeps, ...doors, ...holes],
    thicknessSide: side,
  };
};

interface Run {
  readonly s0: number;
  readonly s1: number;
  readonly down0: number;
  readonly down1: number;
}

const acrossRuns = (wall: Wall, floor: readonly FloorPiece[]): readonly Run[] => {
  const down = depthAt(floor, wall.at) ?? 0;
  const [s0, s1] = wall.span ?? [-FAR, FAR];
  return [{ s0, s1, down0: down, down1: down }];
};

const alongRuns = (wall: Wall, floor: readonly FloorPiece[]): readonly Run[] => {
  const [x0, x1] = wall.span ?? [-FAR, FAR];
  return cutFloor(floor, [x0, x1])
    .filter((p) => p.x0 >= x0 && p.x1 <= x1)
    .map((p) => ({ s0: p.x0, s1: p.x1, down0: p.down0, down1: p.down1 }));
};

const refuseOutside = (baffle: Baffle, index: number, floor: readonly FloorPiece[]): void => {
  const rear = floor[0]?.x0 ?? 0;
  const front = floor[floor.length - 1]?.x1 ?? 0;
  const deepest = Math.max(...floor.map((p) => Math.max(p.down0, p.down1)));
  const problem = (message: string, advice: string): Problem => ({
    code: 'shape-baffle',
    path: ['baffles', index],
    message,
    advice,
  });
  if (baffle.kind === 'lid') {
    if (baffle.down >= deepest || baffle.down <= 0 || baffle.rear >= front || baffle.front <= rear) {
      throw new PanError(
        problem(
          `The ${baffle.tray === undefined ? 'lid' : 'tray'} "${baffle.name}" at ${baffle.down} mm down, x ${baffle.rear} to ${baffle.front}, lies outside the pan.`,
          `Keep it between the rail and the floor (${deepest.toFixed(0)} mm down) and between x = ${rear} and ${front}.`,
        ),
      );
    }
    return;
  }
  if (baffle.run === 'across' && (baffle.at <= rear || baffle.at >= front)) {
    throw new PanError(
      problem(
        `The wall "${baffle.name}" at x = ${baffle.at} stands outside the pan.`,
        `Keep it between x = ${rear} and ${front}.`,
      ),
    );
  }
};

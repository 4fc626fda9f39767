import type { Design, Wing } from '../design/index.js';
import { PanError } from '../errors/index.js';
import { opposite, type PlaneTable } from '../geometry/index.js';
import type { Vec3 } from '../numeric/index.js';
import { owned, type Room } from './cell.js';
import { cutFloor, depthAt, type FloorPiece } from './floor-line.js';
import { halfWidthAt, sideSign, wallPlane } from './half-width.js';
import { roomFromCorners } from './slab.js';

/** A wing's two bounding planes as functions: distance of its outer face from y = 0, and depth of its top. */
export interface WingPlanes {
  /** Distance of its outer face from y = 0 at an x, mm. */
  readonly outer: (x: number) => number;
  /** Depth of the top plane at x and distance |y| from the centre plane. */
  readonly top: (x: number, y: number) => number;
}

/** The planes a wing is bounded by. */
export const wingPlanes = (design: Design, wing: Wing): WingPlanes => {
  const rows = wing.side === 'left' ? design.pan.left : design.pan.right;
  const [wr, wf] = [halfWidthAt(rows, wing.rear), halfWidthAt(rows, wing.front)];
  const run = wing.front - wing.rear;
  const [outerRear, outerFront] = [wr + wing.beyondWall.rear, wf + wing.beyondWall.front];
  const fall = Math.tan(wing.topFall);
  const rise = (wing.topDown.front - wing.topDown.rear - fall * (wf - wr)) / run;
  return {
    outer: (x) =>
      x === wing.front ? outerFront : outerRear + ((outerFront - outerRear) * (x - wing.rear)) / run,
    top: (x, y) => wing.topDown.rear + rise * (x - wing.rear) + fall * (y - wr),
  };
};

/** The rooms of every wing, between the pan's wall and the wing's outer plane, above the floor, under its top. */
export const wingRooms = (
  table: PlaneTable,
  design: Design,
  floor: readonly FloorPiece[],
): readonly Room[] => {
  refuseShared(design.pan.wings);
  return design.pan.wings.flatMap((wing, index) => oneWing(table, design, floor, wing, index));
};

const oneWing = (
  table: PlaneTable,
  design: Design,
  floor: readonly FloorPiece[],
  wing: Wing,
  index: number,
): readonly Room[] => {
  const rows = wing.side === 'left' ? design.pan.left : design.pan.right;
  const sign = sideSign(wing.side);
  const planes = wingPlanes(design, wing);
  if (depthAt(floor, wing.rear) === null || depthAt(floor, wing.front) === null) {
    throw wingError(
      index,
      `The wing "${wing.name}" reaches from x = ${wing.rear} to ${wing.front}, past the end of the pan.`,
      'Keep its rear and front between the pan’s end walls.',
    );
  }
  const tag = owned('wing', index);
  const pieces = cutFloor(floor, [wing.rear, wing.front, ...rows.map((p) => p[0])]).filter(
    (p) => p.x0 >= wing.rear && p.x1 <= wing.front,
  );
  return pieces.map((p) => {
    const inner = opposite(wallPlane(table, rows, sign, p.x0, p.x1));
    const end = (x: number, down: number): [Vec3, Vec3, Vec3, Vec3] => {
      const [wall, outer] = [halfWidthAt(rows, x), planes.outer(x)];
      if (outer <= wall) {
        throw wingError(
          index,
          `The wing "${wing.name}" does not stand outside the pan’s wall at x = ${x}.`,
          'Give it more beyond_wall.',
        );
      }
      for (const y of [wall, outer]) {
        const top = planes.top(x, y);
        if (top <= 0 || top >= down) {
          throw wingError(
            index,
            `The top of the wing "${wing.name}" is ${top.toFixed(1)} mm below the rail at x = ${x.toFixed(1)}, and the floor there ${down.toFixed(1)} mm.`,
            'Keep the wing inside the sump: its top must lie between rail and floor over its whole length.',
          );
        }
      }
      const at = (y: number, depth: number): Vec3 => [x, sign * y, -depth];
      const corners: [Vec3, Vec3, Vec3, Vec3] =
        sign > 0
          ? [at(wall, down), at(outer, down), at(outer, planes.top(x, outer)), at(wall, planes.top(x, wall))]
          : [at(outer, down), at(wall, down), at(wall, planes.top(x, wall)), at(outer, planes.top(x, outer))];
      return corners;
    };
    return roomFromCorners(
      table,
      { rear: end(p.x0, p.down0), front: end(p.x1, p.down1) },
      { rear: tag, front: tag, right: tag, left: tag, bottom: tag, top: tag },
      'wing',
      sign > 0 ? { right: inner } : { left: inner },
    );
  });
};

const refuseShared = (wings: readonly Wing[]): void => {
  wings.forEach((a, i) => {
    const b = wings.find((w, j) => j > i && w.side === a.side && w.rear < a.front && a.rear < w.front);
    if (b !== undefined) {
      throw wingError(
        wings.indexOf(b),
        `The wings "${a.name}" and "${b.name}" overlap on the ${a.side}.`,
        'Part them along x, or make them one wing.',
      );
    }
  });
};

const wingError = (index: number, message: string, advice: string): PanError =>
  new PanError({ code: 'shape-wing', path: ['pan', 'wings', index], message, advice });

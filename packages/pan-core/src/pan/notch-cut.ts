import type { Design, Notch } from '../design/index.js';
import { PanError } from '../errors/index.js';
import {
  cellVolume,
  type PlaneTable,
  planeThrough,
  type SidedPlane,
  subtractConvex,
} from '../geometry/index.js';
import type { Vec2, Vec3 } from '../numeric/index.js';
import { owned, type Room } from './cell.js';

/** The outward-looking planes of a notch. */
export const notchPlanes = (table: PlaneTable, notch: Notch): readonly SidedPlane[] => {
  if (notch.kind === 'box') {
    return ([0, 1, 2] as const).flatMap((axis) => {
      const out = (s: 1 | -1): Vec3 => [axis === 0 ? s : 0, axis === 1 ? s : 0, axis === 2 ? s : 0];
      return [planeThrough(table, out(-1), notch.min), planeThrough(table, out(1), notch.max)];
    });
  }
  const axis = { x: 0, y: 1, z: 2 }[notch.along] as 0 | 1 | 2;
  const [i, j] = ([0, 1, 2] as const).filter((k) => k !== axis) as [0 | 1 | 2, 0 | 1 | 2];
  const put = (p: Vec2, along: number): Vec3 => {
    const out: [number, number, number] = [0, 0, 0];
    out[i] = p[0];
    out[j] = p[1];
    out[axis] = along;
    return out;
  };
  const sides = notch.triangle.map((a, k): SidedPlane => {
    const b = notch.triangle[(k + 1) % 3] as Vec2;
    const c = notch.triangle[(k + 2) % 3] as Vec2;
    const normal: Vec2 = [b[1] - a[1], a[0] - b[0]];
    const inward = normal[0] * (c[0] - a[0]) + normal[1] * (c[1] - a[1]) > 0;
    const out: Vec2 = inward ? [-normal[0], -normal[1]] : normal;
    const direction: [number, number, number] = [0, 0, 0];
    direction[i] = out[0];
    direction[j] = out[1];
    return planeThrough(table, direction, put(a, 0));
  });
  const end = (s: 1 | -1): Vec3 => [axis === 0 ? s : 0, axis === 1 ? s : 0, axis === 2 ? s : 0];
  const first = notch.triangle[0];
  return [
    ...sides,
    planeThrough(table, end(-1), put(first, notch.from)),
    planeThrough(table, end(1), put(first, notch.to)),
  ];
};

/** Takes every notch out of every room. Refuses a notch that takes nothing. */
export const cutNotches = (table: PlaneTable, design: Design, rooms: readonly Room[]): readonly Room[] =>
  design.pan.notches.reduce<readonly Room[]>((left, notch, index) => {
    const planes = notchPlanes(table, notch);
    const tag = owned('notch', index);
    const cut = left.flatMap((room): readonly Room[] => {
      const pieces = subtractConvex(table, room, planes, tag);
      return pieces.length === 1 && pieces[0] === room
        ? [room]
        : pieces.map((p) => ({ ...p, zone: room.zone }));
    });
    const volume = (list: readonly Room[]): number => list.reduce((sum, r) => sum + cellVolume(r), 0);
    if (volume(left) - volume(cut) < 1) {
      throw new PanError({
        code: 'shape-notch',
        path: ['pan', 'notches', index],
        message: `The notch "${notch.name}" does not reach into the pan.`,
        advice: 'Move it so that it cuts a wall or the floor, or take it out.',
      });
    }
    return cut;
  }, rooms);

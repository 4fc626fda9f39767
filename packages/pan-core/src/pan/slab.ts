import type { Design } from '../design/index.js';
import { cellFromLoops, type PlaneTable, planeThrough, type SidedPlane } from '../geometry/index.js';
import type { Vec3 } from '../numeric/index.js';
import { owned, type Room, type RoomFace, type Zone } from './cell.js';
import { cutFloor, type FloorPiece } from './floor-line.js';
import { halfWidthAt, wallPlane } from './half-width.js';

/** The eight corners of a cell between two x: [x end][y side][bottom, top], as the face builder wants them. */
export interface Corners {
  readonly rear: readonly [Vec3, Vec3, Vec3, Vec3];
  readonly front: readonly [Vec3, Vec3, Vec3, Vec3];
}

/** One room between x0 and x1 from its corners in the order right-bottom, left-bottom, left-top, right-top. */
export const roomFromCorners = (
  table: PlaneTable,
  corners: Corners,
  owners: Readonly<Record<'rear' | 'front' | 'right' | 'left' | 'bottom' | 'top', RoomFace['tag']>>,
  zone: Zone,
  walls: { readonly right?: SidedPlane; readonly left?: SidedPlane } = {},
): Room => {
  const [a, b, c, d] = corners.rear;
  const [e, f, g, h] = corners.front;
  const face = (plane: SidedPlane, loop: readonly Vec3[], tag: RoomFace['tag']): RoomFace => ({
    ...plane,
    loop,
    tag,
  });
  const across = (p: Vec3, q: Vec3, r: Vec3): Vec3 => {
    const [u, v] = [
      [q[0] - p[0], q[1] - p[1], q[2] - p[2]],
      [r[0] - p[0], r[1] - p[1], r[2] - p[2]],
    ] as [Vec3, Vec3];
    return [u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]];
  };
  const sidePlane = (p: Vec3, q: Vec3, out: 1 | -1): SidedPlane =>
    p[1] === q[1]
      ? planeThrough(table, [0, out, 0], p)
      : planeThrough(table, [out * (p[1] - q[1]), out * (q[0] - p[0]), 0], p);
  const levelPlane = (p: Vec3, q: Vec3, r: Vec3, out: 1 | -1): SidedPlane => {
    if (p[2] === q[2] && p[2] === r[2]) return planeThrough(table, [0, 0, out], p);
    const n = across(p, q, r);
    return planeThrough(table, n[2] * out > 0 ? n : [-n[0], -n[1], -n[2]], p);
  };
  const room = cellFromLoops<RoomFace['tag']>([
    face(planeThrough(table, [-1, 0, 0], a), [a, d, c, b], owners.rear),
    face(planeThrough(table, [1, 0, 0], e), [e, f, g, h], owners.front),
    face(walls.right ?? sidePlane(a, e, -1), [a, e, h, d], owners.right),
    face(walls.left ?? sidePlane(b, f, 1), [b, c, g, f], owners.left),
    face(levelPlane(a, e, b, -1), [a, b, f, e], owners.bottom),
    face(levelPlane(d, h, c, 1), [d, h, g, c], owners.top),
  ]);
  return { ...room, zone };
};

/** The pan itself, one room per straight piece of floor and width, from the floor up to the rail. */
export const slabs = (
  table: PlaneTable,
  design: Design,
  floor: readonly FloorPiece[],
  sumpFront: number,
): readonly Room[] => {
  const { left, right } = design.pan;
  const stations = [...left.map((p) => p[0]), ...right.map((p) => p[0]), sumpFront];
  const belly = owned('belly');
  return cutFloor(floor, stations).map((p) => {
    const end = (x: number, down: number): [Vec3, Vec3, Vec3, Vec3] => {
      const [r, l] = [-halfWidthAt(right, x), halfWidthAt(left, x)];
      const z = down === 0 ? 0 : -down;
      return [
        [x, r, z],
        [x, l, z],
        [x, l, 0],
        [x, r, 0],
      ];
    };
    return roomFromCorners(
      table,
      { rear: end(p.x0, p.down0), front: end(p.x1, p.down1) },
      {
        rear: belly,
        front: belly,
        right: owned('side right'),
        left: owned('side left'),
        bottom: belly,
        top: owned('block'),
      },
      p.x0 >= sumpFront ? 'shallow' : 'sump',
      {
        right: wallPlane(table, right, -1, p.x0, p.x1),
        left: wallPlane(table, left, 1, p.x0, p.x1),
      },
    );
  });
};

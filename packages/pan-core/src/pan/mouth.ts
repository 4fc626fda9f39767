import type { Design } from '../design/index.js';
import { PanError } from '../errors/index.js';
import type { PlaneTable } from '../geometry/index.js';
import { dot3, type Vec3 } from '../numeric/index.js';
import type { Barrier } from './barrier.js';
import type { Room } from './cell.js';
import { depthAt, type FloorPiece } from './floor-line.js';

/** The pickup's mouth: a level disc at the floor under its centre plus the gap. */
export interface Mouth {
  readonly centre: Vec3;
  readonly radius: number;
  readonly cell: number;
}

const RIM_POINTS = 48;

/** @throws PanError `shape-mouth` when the disc is in the metal, outside the pan, or cut by a baffle. */
export const placeMouth = (
  table: PlaneTable,
  design: Design,
  floor: readonly FloorPiece[],
  rooms: readonly Room[],
  barriers: readonly Barrier[],
): Mouth => {
  const [x, y] = design.pickup.at;
  const radius = design.pickup.mouth / 2;
  const refuse = (message: string, advice: string): PanError =>
    new PanError({ code: 'shape-mouth', path: ['pickup', 'at'], message, advice });
  const down = depthAt(floor, x);
  if (down === null)
    throw refuse(`The pickup at x = ${x} is outside the pan.`, 'Move pickup.at into the sump.');
  const centre: Vec3 = [x, y, -down + design.pickup.gap];
  const cell = rooms.findIndex((room) => holds(table, room, centre));
  if (cell < 0) {
    throw refuse(
      `The middle of the mouth at ${show(centre)} is not inside the pan.`,
      'Move pickup.at or widen the sump there.',
    );
  }
  for (let i = 0; i < RIM_POINTS; i++) {
    const t = (2 * Math.PI * i) / RIM_POINTS;
    const rim: Vec3 = [x + radius * Math.cos(t), y + radius * Math.sin(t), centre[2]];
    if (!rooms.some((room) => holds(table, room, rim))) {
      throw refuse(
        `The mouth’s rim at ${show(rim)} is in the metal.`,
        `Keep the ${design.pickup.mouth} mm mouth clear of walls and floor, or make it smaller.`,
      );
    }
  }
  for (const barrier of barriers) {
    if (cuts(barrier, centre, radius)) {
      throw refuse(
        `The mouth is cut by the baffle "${barrier.baffle.name}".`,
        'Move the mouth or the baffle so that the whole rim is on one side.',
      );
    }
  }
  return { centre, radius, cell };
};

const cuts = ({ baffle, top }: Barrier, [x, y, z]: Vec3, radius: number): boolean => {
  if (baffle.kind === 'lid') {
    return (
      Math.abs(-baffle.down - z) < 1e-9 &&
      within([baffle.rear, baffle.front], x, radius) &&
      within(baffle.span, y, radius)
    );
  }
  const [off, along] = baffle.run === 'across' ? [baffle.at - x, y] : [baffle.at - y, x];
  return Math.abs(off) < radius && -top > z && within(baffle.span, along, radius);
};

const within = (span: readonly [number, number] | null, at: number, radius: number): boolean =>
  span === null || (span[0] < at + radius && span[1] > at - radius);

const show = (p: Vec3): string => `x ${p[0].toFixed(1)}, y ${p[1].toFixed(1)}, z ${p[2].toFixed(1)} mm`;

/** Whether a point lies in a room, its faces included. */
export const holds = (table: PlaneTable, room: Room, p: Vec3): boolean =>
  room.faces.every((f) => {
    const e = table.planes[f.plane];
    return e !== undefined && f.side * (dot3(e.normal, p) - e.offset) <= 1e-9;
  });

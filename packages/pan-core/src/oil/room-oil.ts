import { dot3, type Vec3 } from '../numeric/index.js';
import type { OilAnswer, OilSystem, PoolAnswer } from './answer.js';
import { createOriented, heightOf, orient } from './body.js';
import { createMeasure, solveLevel } from './level.js';

/** Oil of one room, mm³, under a flat surface square to `up`, a unit vector in pan axes. */
export interface RoomOil {
  readonly cells: readonly number[];
  readonly volume: number;
  readonly up: Vec3;
}

/** A room's oil with the height of its surface along its own `up`, from the pan's origin, mm. */
export interface LevelledRoom extends Pick<PoolAnswer, 'cells' | 'volume' | 'level' | 'hasPickup'> {
  readonly up: Vec3;
}

/** The pools of an answer as rooms of one and the same `up`. */
export const roomsOfAnswer = ({ up, pools }: Pick<OilAnswer, 'up' | 'pools'>): readonly LevelledRoom[] =>
  pools.map(({ cells, volume, level, hasPickup }) => ({ cells, volume, level, hasPickup, up }));

/** Where the surfaces of rooms stand that each hold so much oil; what is more than full stands at the top. */
export const levelRooms = (system: OilSystem, rooms: readonly RoomOil[]): readonly LevelledRoom[] => {
  const { body, model } = system;
  return rooms.map(({ cells, volume, up }) => {
    const oriented = orient(createOriented(body), up);
    const holds = cells.reduce((sum, c) => sum + (body.capacity[c] as number), 0);
    const level = solveLevel(oriented, cells, Math.min(Math.max(0, volume), holds), createMeasure());
    return {
      cells,
      volume,
      up,
      level: level - heightOf(oriented, [0, 0, 0]),
      hasPickup: cells.includes(model.mouth.cell),
    };
  });
};

/** The upward unit vector of a surface that rises toward the front and the left by these angles, radians. */
export const upOfRise = (front: number, left: number): Vec3 => {
  const raw: Vec3 = [-Math.tan(front), -Math.tan(left), 1];
  const size = Math.sqrt(dot3(raw, raw));
  return [raw[0] / size, raw[1] / size, raw[2] / size];
};

import {
  attitudeOf,
  type LevelledRoom,
  levelRooms,
  type NamedRoom,
  type OilSystem,
  type SurgeCase,
  upOfRise,
} from 'pan-core';

const DEGREE = Math.PI / 180;

/** Place in a series of the last row not after a time. */
export const rowAt = (times: readonly number[], time: number): number => {
  let [low, high] = [0, times.length - 1];
  while (low < high) {
    const middle = Math.ceil((low + high) / 2);
    if ((times[middle] as number) <= time) low = middle;
    else high = middle - 1;
  }
  return low;
};

/**
 * Oil of every room at one row of a surge: the mouth's room by the surface that swings, the others by the load, as
 * the series tells only the mouth's.
 */
export const surgeRooms = (
  system: OilSystem,
  rooms: readonly NamedRoom[],
  { series }: SurgeCase,
  row: number,
): readonly LevelledRoom[] => {
  const still = attitudeOf(system.model.design, {
    forward: series.forward_g[row] ?? 0,
    left: series.left_g[row] ?? 0,
    grade: 0,
  }).up;
  const swung = upOfRise((series.front_deg[row] ?? 0) * DEGREE, (series.left_deg[row] ?? 0) * DEGREE);
  return levelRooms(
    system,
    series.rooms.flatMap(({ name, volume_L }) => {
      const room = rooms.find((one) => one.name === name);
      if (room === undefined) return [];
      const mine = room.cells.includes(system.model.mouth.cell);
      return [{ cells: room.cells, volume: (volume_L[row] ?? 0) * 1e6, up: mine ? swung : still }];
    }),
  );
};

import {
  cellVolume,
  clipCell,
  intersectConvexPolygons,
  NO_VOLUME,
  type PlaneTable,
} from '../geometry/index.js';
import type { Barrier } from './barrier.js';
import { owned, type Room } from './cell.js';
import { flatLoop } from './flat-loop.js';

/** Cuts each room that a baffle stands in along the baffle's plane; rooms it does not reach stay whole. */
export const splitAtBarriers = (
  table: PlaneTable,
  rooms: readonly Room[],
  barriers: readonly Barrier[],
): readonly Room[] =>
  barriers.reduce<readonly Room[]>((left, barrier) => {
    const tag = owned('baffle', barrier.index);
    return left.flatMap((room): readonly Room[] => {
      if (room.zone === 'crankcase') return [room];
      const below = clipCell(table, room, { plane: barrier.plane, side: 1 }, tag);
      const above = clipCell(table, room, { plane: barrier.plane, side: -1 }, tag);
      if (below === null || above === null || below === room || above === room) return [room];
      if (cellVolume(below) <= NO_VOLUME || cellVolume(above) <= NO_VOLUME) return [room];
      const cut = below.faces.find((f) => f.plane === barrier.plane && f.side === 1);
      const met =
        cut !== undefined &&
        barrier.covers.some((cover) => intersectConvexPolygons(flatLoop(table, cut), cover).length > 0);
      return met ? [below, above].map((half) => ({ ...half, zone: room.zone })) : [room];
    });
  }, rooms);

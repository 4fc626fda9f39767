import type { Design } from '../design/index.js';
import { cellVolume, type PlaneTable } from '../geometry/index.js';
import { add3, length3, scale3, subtract3, type Vec3 } from '../numeric/index.js';
import type { Room } from './cell.js';
import { holds } from './mouth.js';

/** Steps along the pickup tube when its volume is shared out among the cells it passes, mm. */
const TUBE_STEP = 5;
/** A cell is never counted as more than this share metal: past it the hardware's place is a guess anyway. */
const MOST_METAL = 0.9;

/** Share of each cell that oil can fill, 0–1: crank and rods above the rail, pickup tube and baffles below. */
export const openShares = (
  table: PlaneTable,
  design: Design,
  rooms: readonly Room[],
  covered: readonly { readonly baffle: number; readonly cell: number; readonly area: number }[],
): readonly number[] => {
  const metal = rooms.map(() => 0);
  for (const { baffle, cell, area } of covered) {
    metal[cell] = (metal[cell] as number) + area * (design.baffles[baffle]?.thickness ?? 0);
  }
  const { route, bore, wall } = design.pickup;
  const section = (Math.PI * (bore + 2 * wall) ** 2) / 4;
  for (let i = 0; i + 1 < route.length; i++) {
    const a = route[i] as Vec3;
    const run = subtract3(route[i + 1] as Vec3, a);
    const steps = Math.max(1, Math.ceil(length3(run) / TUBE_STEP));
    for (let k = 0; k < steps; k++) {
      const p = add3(a, scale3(run, (k + 0.5) / steps));
      const cell = rooms.findIndex((room) => holds(table, room, p));
      if (cell >= 0) metal[cell] = (metal[cell] as number) + (section * length3(run)) / steps;
    }
  }
  return rooms.map((room, i) => {
    const volume = cellVolume(room);
    const below = 1 - Math.min((metal[i] as number) / volume, MOST_METAL);
    return room.zone === 'crankcase' ? 1 - design.engine.crankcaseDisplaced : below;
  });
};

import { type CuttingPlane, sliceCell } from '../geometry/index.js';
import { cross3, unit3, type Vec3 } from '../numeric/index.js';
import type { PanModel } from '../pan/index.js';
import type { LevelledRoom } from './room-oil.js';

/** The flat top of oil in one cell, seen from above counter-clockwise; pan axes, mm. */
export interface OpenSurface {
  readonly hasPickup: boolean;
  readonly loop: readonly Vec3[];
}

/** The top of the oil in every cell of rooms, to draw: square to each room's own `up`. */
export const openSurfaces = (
  model: Pick<PanModel, 'cells'>,
  rooms: readonly LevelledRoom[],
): readonly OpenSurface[] =>
  rooms.flatMap(({ cells, level, up, volume, hasPickup }) => {
    if (volume <= 0) return [];
    const right = unit3(cross3([0, 1, 0], up));
    const upward = cross3(up, right);
    const at: Vec3 = [level * up[0], level * up[1], level * up[2]];
    const plane: CuttingPlane = { at, right, upward };
    return cells.flatMap((c): readonly OpenSurface[] => {
      const cell = model.cells[c];
      const flat = cell === undefined ? [] : sliceCell(cell, plane);
      const lift = ([u, v]: readonly [number, number]): Vec3 => [
        at[0] + u * right[0] + v * upward[0],
        at[1] + u * right[1] + v * upward[1],
        at[2] + u * right[2] + v * upward[2],
      ];
      return flat.length < 3 ? [] : [{ hasPickup, loop: flat.map(lift) }];
    });
  });

import { type CuttingPlane, placeIn, sliceCell } from '../geometry/index.js';
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
      return flat.length < 3 ? [] : [{ hasPickup, loop: flat.map((p) => placeIn(plane, p)) }];
    });
  });

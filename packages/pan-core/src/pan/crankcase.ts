import type { Design } from '../design/index.js';
import { PanError } from '../errors/index.js';
import { insetPolygon, type PlaneTable, trapezoids } from '../geometry/index.js';
import type { Vec3 } from '../numeric/index.js';
import { owned, type Room } from './cell.js';
import { roomFromCorners } from './slab.js';

/** The closed space above the rail that oil can climb into: the rail's inside, up to the crankcase's top. */
export const crankcaseRooms = (table: PlaneTable, design: Design): readonly Room[] => {
  const { rail, crankcaseTop } = design.engine;
  const inside = insetPolygon(rail.outline, rail.land);
  if (inside === null) {
    throw new PanError({
      code: 'shape-rail',
      path: ['engine', 'rail'],
      message: `A sealing land of ${rail.land} mm all round leaves no opening inside the rail.`,
      value: rail.land,
      unit: 'mm',
      advice: 'Check the rail’s outline and engine.rail.land.',
    });
  }
  const block = owned('block');
  return trapezoids(inside).map((t) => {
    const end = (x: number, low: number, high: number): [Vec3, Vec3, Vec3, Vec3] => [
      [x, low, 0],
      [x, high, 0],
      [x, high, crankcaseTop],
      [x, low, crankcaseTop],
    ];
    return roomFromCorners(
      table,
      { rear: end(t.x0, t.low[0], t.high[0]), front: end(t.x1, t.low[1], t.high[1]) },
      { rear: block, front: block, right: block, left: block, bottom: block, top: block },
      'crankcase',
    );
  });
};

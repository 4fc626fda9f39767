import { type CuttingPlane, type Polygon, sliceCell } from '../geometry/index.js';
import { dot3, type Vec2 } from '../numeric/index.js';
import type { PanModel } from '../pan/index.js';
import type { PoolAnswer } from './answer.js';

/** One cell as a plane cuts it: its whole outline, mm in the plane's axes. */
export interface RoomSlice {
  readonly cell: number;
  readonly outline: Polygon;
}

/** The oil of one pool in one cell as a plane cuts it. */
export interface OilSlice extends RoomSlice {
  /** Place of its pool in the answer. */
  readonly pool: number;
}

/** What a slice asks of a pool. */
type SlicedPool = Pick<PoolAnswer, 'cells' | 'volume' | 'level'>;

/** Every cell that the plane cuts. */
export const sliceRooms = (model: Pick<PanModel, 'cells'>, plane: CuttingPlane): readonly RoomSlice[] =>
  model.cells.flatMap((room, cell) => {
    const outline = sliceCell(room, plane);
    return outline.length === 0 ? [] : [{ cell, outline }];
  });

/** What of sliced cells stands under oil: each cell up to its own pool's surface, square to effective gravity. */
export const sliceOil = (
  rooms: readonly RoomSlice[],
  plane: CuttingPlane,
  { up, pools }: { readonly up: readonly [number, number, number]; readonly pools: readonly SlicedPool[] },
): readonly OilSlice[] => {
  const poolOf = new Map<number, number>();
  pools.forEach((pool, i) => {
    if (pool.volume > 0) for (const cell of pool.cells) poolOf.set(cell, i);
  });
  const [base, right, upward] = [dot3(up, plane.at), dot3(up, plane.right), dot3(up, plane.upward)];
  return rooms.flatMap(({ cell, outline }) => {
    const pool = poolOf.get(cell);
    if (pool === undefined) return [];
    const { level } = pools[pool] as SlicedPool;
    const wet = below(outline, (p) => base + p[0] * right + p[1] * upward - level);
    return wet.length < 3 ? [] : [{ cell, pool, outline: wet }];
  });
};

/** The part of a convex polygon where a linear height is not positive. */
const below = (polygon: Polygon, height: (p: Vec2) => number): Polygon =>
  polygon.flatMap((p, i): Vec2[] => {
    const q = polygon[(i + 1) % polygon.length] as Vec2;
    const [dp, dq] = [height(p), height(q)];
    const kept: Vec2[] = dp <= 0 ? [p] : [];
    if (dp < 0 !== dq < 0 && dp !== 0 && dq !== 0) {
      const t = dp / (dp - dq);
      kept.push([p[0] + t * (q[0] - p[0]), p[1] + t * (q[1] - p[1])]);
    }
    return kept;
  });

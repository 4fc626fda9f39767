import { dot3, type Vec3 } from '../numeric/index.js';
import { holds, type PanModel } from '../pan/index.js';
import type { OilAnswer } from './answer.js';

/** The part of a straight line that lies in one cell: from + t·along for t from `enters` to `leaves`, mm. */
export interface Stretch {
  readonly cell: number;
  readonly enters: number;
  readonly leaves: number;
}

const SHORTEST = 1e-9;

/** A straight line's way through the cells, in order; `along` is of unit length. */
export const stretches = (model: PanModel, from: Vec3, along: Vec3): readonly Stretch[] => {
  const found: Stretch[] = [];
  model.cells.forEach((room, cell) => {
    let [enters, leaves] = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
    for (const face of room.faces) {
      const plane = model.table.planes[face.plane];
      if (plane === undefined) continue;
      const off = face.side * (dot3(plane.normal, from) - plane.offset);
      const rate = face.side * dot3(plane.normal, along);
      if (rate === 0) {
        if (off > 0) return;
        continue;
      }
      if (rate > 0) leaves = Math.min(leaves, -off / rate);
      else enters = Math.max(enters, -off / rate);
    }
    if (leaves - enters > SHORTEST) found.push({ cell, enters, leaves });
  });
  return found.sort((a, b) => a.enters - b.enters);
};

const heightAlong = (up: Vec3, p: Vec3): number => dot3(up, p);

/** The cells a point lies in, its walls included. */
export const cellsAt = (model: PanModel, p: Vec3): readonly number[] =>
  [...model.cells.keys()].filter((c) => {
    const room = model.cells[c];
    return room !== undefined && holds(model.table, room, p);
  });

/**
 * Depth of a point under the oil that stands there, mm along effective gravity: positive when it is under oil,
 * negative by its height over the first oil plumb below it; null when there is none.
 */
export const depthUnderOil = (model: PanModel, answer: OilAnswer, p: Vec3): number | null => {
  const { up } = answer;
  const height = heightAlong(up, p);
  const here = cellsAt(model, p);
  const wet = answer.pools.filter((pool) => pool.volume > 0);
  const over = wet.filter((pool) => pool.level > height && here.some((c) => pool.cells.includes(c)));
  if (over.length > 0) return Math.max(...over.map((pool) => pool.level)) - height;
  const below = stretches(model, p, [-up[0], -up[1], -up[2]]).flatMap(({ cell, enters, leaves }) => {
    const pool = wet.find(({ cells }) => cells.includes(cell));
    if (pool === undefined || leaves <= 0) return [];
    const top = Math.min(pool.level, height - Math.max(enters, 0));
    return top > height - leaves ? [top - height] : [];
  });
  return below.length === 0 ? null : Math.max(...below);
};

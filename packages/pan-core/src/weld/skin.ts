import { areaVector, liftPoint, type PlaneEquation } from '../geometry/index.js';
import { cross3, dot3, subtract3, unit3, type Vec3 } from '../numeric/index.js';
import type { Owner, PanModel } from '../pan/index.js';
import { joinPoints } from './join-points.js';

/** A convex flat piece of the pan's inside, or of the open top at the rail plane ('lid'). */
export interface SkinPiece {
  readonly owner: Owner | 'lid';
  readonly index: number;
  /** Unit normal pointing out of the oil. */
  readonly normal: Vec3;
  /** Places in `points`, counter-clockwise seen from outside; neighbours share every point of an edge. */
  readonly loop: readonly number[];
}

/** The closed inside surface of a pan below the rail, fit to be paired edge by edge. */
export interface Skin {
  readonly points: readonly Vec3[];
  readonly pieces: readonly SkinPiece[];
}

/** Whether a piece is sheet: not the open top, nor what closes the pan at the rail. */
export const isSheet = ({ owner }: SkinPiece): boolean =>
  owner !== 'lid' && owner !== 'flange' && owner !== 'block';

/** Whether a point of a convex piece's plane lies on it, or within so many mm of its edges. */
export const isOnPiece = ({ points }: Skin, { loop, normal }: SkinPiece, p: Vec3, within: number): boolean =>
  loop.every((place, i) => {
    const a = points[place] as Vec3;
    const along = subtract3(points[loop[(i + 1) % loop.length] as number] as Vec3, a);
    return dot3(normal, cross3(along, subtract3(p, a))) >= -within * Math.hypot(...along);
  });

/** The inside faces of a pan with the open top closed; baffles and their thickness are not in it. */
export const panSkin = (model: PanModel): Skin => {
  const found: { owner: Owner | 'lid'; index: number; loop: readonly Vec3[] }[] = [];
  const isTop = (cell: number, plane: number, side: number): boolean => {
    const equation = model.table.planes[plane] as PlaneEquation;
    const up = equation.normal[2] * side;
    return up === 1 && equation.offset === 0 && model.cells[cell]?.zone !== 'crankcase';
  };
  for (const { cell, face, pieces } of model.bare) {
    if (model.cells[cell]?.zone === 'crankcase' || isTop(cell, face.plane, face.side)) continue;
    const equation = model.table.planes[face.plane] as PlaneEquation;
    for (const flat of pieces) {
      const lifted = flat.map((p) => liftPoint(equation, p));
      const loop =
        dot3(areaVector(lifted), equation.normal) * face.side >= 0 ? lifted : [...lifted].reverse();
      found.push({ ...face.tag, loop });
    }
  }
  model.cells.forEach((room, cell) => {
    for (const face of room.faces) {
      if (isTop(cell, face.plane, face.side)) found.push({ owner: 'lid', index: 0, loop: face.loop });
    }
  });
  const { points, loops } = joinPoints(found.map((piece) => piece.loop));
  const pieces = found.flatMap((piece, i): SkinPiece[] => {
    const loop = loops[i] as readonly number[];
    if (loop.length < 3) return [];
    return [{ owner: piece.owner, index: piece.index, normal: unit3(areaVector(piece.loop)), loop }];
  });
  return { points, pieces };
};

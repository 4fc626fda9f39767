import type { Design, Notch } from '../design/index.js';
import {
  clipCell,
  type PlaneTable,
  planeThrough,
  type SidedPlane,
  subtractConvex,
} from '../geometry/index.js';
import { dot3, type Vec3 } from '../numeric/index.js';
import { notchPlanes } from './notch-cut.js';
import type { Piece } from './outside-solid.js';

/** A convex piece with the name of the part of the pan it belongs to. */
export interface NamedPiece {
  readonly name: string;
  readonly piece: Piece;
}

/**
 * Takes the notches out of the pan's outside. A notch's faces are the oil's; the sheet stands on their far
 * side, in the notch, so the free room is the notch with each face that has oil behind it moved in by the
 * thickness. A face with no oil behind it carries no sheet and is moved out of the way.
 */
export const notchedPieces = (
  table: PlaneTable,
  design: Design,
  pieces: readonly NamedPiece[],
): readonly NamedPiece[] =>
  design.pan.notches.reduce<readonly NamedPiece[]>((left, notch) => {
    const free = freePlanes(table, design, notch, left);
    return left.flatMap(({ name, piece }) =>
      subtractConvex(table, piece, free, notch.name).map((rest) => ({ name, piece: rest })),
    );
  }, pieces);

const freePlanes = (
  table: PlaneTable,
  design: Design,
  notch: Notch,
  pieces: readonly NamedPiece[],
): readonly SidedPlane[] => {
  const { thickness } = design.pan.sheet;
  const planes = notchPlanes(table, notch);
  return planes.map((plane, k) => {
    const { normal, offset } = table.planes[plane.plane]!;
    const outward: Vec3 = [plane.side * normal[0], plane.side * normal[1], plane.side * normal[2]];
    const others = planes.filter((_, i) => i !== k);
    let beyond = 0;
    for (const { piece } of pieces) {
      const column = others.reduce<Piece | null>((p, other) => p && clipCell(table, p, other, ''), piece);
      for (const face of column?.faces ?? [])
        for (const p of face.loop) beyond = Math.max(beyond, dot3(outward, p) - plane.side * offset);
    }
    // A floor that slopes across the notch stands a little more than its thickness beyond the face.
    const move = beyond > 1.1 * thickness ? -thickness : beyond + thickness;
    const d = plane.side * offset + move;
    return planeThrough(table, outward, [outward[0] * d, outward[1] * d, outward[2] * d]);
  });
};

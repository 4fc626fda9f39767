import { dot3, type Vec3 } from '../numeric/index.js';
import type { Skin } from '../weld/index.js';
import { leastShift } from './least-shift.js';
import { type Mesh, meshOfLoops, requireClosed, roundMesh } from './mesh.js';

/** The room inside the pan below the rail as one closed solid, baffles left out. */
export const insideSolid = (skin: Skin): Mesh =>
  requireClosed(
    roundMesh(
      meshOfLoops(
        skin.points,
        skin.pieces.map((piece) => piece.loop),
      ),
    ),
    'inside of the pan',
  );

/**
 * The outside of the pan as one closed solid: every sheet face moved out by the thickness, the rail plane
 * where it is, edges mitred.
 *
 * Where more than three faces meet at a point no single point lies a thickness from all of them; the
 * nearest in the sense of least squares is taken.
 */
export const outsideSolid = (skin: Skin, thickness: number): Mesh =>
  requireClosed(
    roundMesh(
      meshOfLoops(
        movedOut(skin, thickness),
        skin.pieces.map((piece) => piece.loop),
      ),
    ),
    'outside of the pan',
  );

/** What closes the pan at the rail and is no sheet of its own. */
const NO_SHEET: ReadonlySet<string> = new Set(['lid', 'flange', 'block']);

/**
 * The pan's sheet as one closed solid, open at the rail: between two faces that stand `inner` and `outer` mm out
 * from the inside face. 0 and the thickness give the metal as it is; less than 0 is inside the oil.
 */
export const hollowSolid = (skin: Skin, inner: number, outer: number): Mesh => {
  const [inside, outside] = [movedOut(skin, inner), movedOut(skin, outer)];
  const shift = inside.length;
  const sheet = skin.pieces.filter(({ owner }) => !NO_SHEET.has(owner));
  const edges = new Set(
    sheet.flatMap(({ loop }) => loop.map((a, i) => `${a} ${loop[(i + 1) % loop.length]}`)),
  );
  const loops = sheet.flatMap(({ loop }) => [
    [...loop].reverse(),
    loop.map((place) => place + shift),
    ...loop.flatMap((a, i) => {
      const b = loop[(i + 1) % loop.length] as number;
      return edges.has(`${b} ${a}`) ? [] : [[a, b, b + shift, a + shift]];
    }),
  ]);
  return requireClosed(roundMesh(meshOfLoops([...inside, ...outside], loops)), 'pan of sheet');
};

/** Every corner moved out until each sheet face is `by` from where it was; what lies at the rail stays at its height. */
const movedOut = (skin: Skin, by: number): readonly Vec3[] => {
  const normals = skin.points.map((): Vec3[] => []);
  const lid = new Set<number>();
  for (const piece of skin.pieces) {
    for (const place of piece.loop) {
      if (piece.owner === 'lid') lid.add(place);
      else if (!normals[place]?.some((n) => dot3(n, piece.normal) > 1 - 1e-12))
        normals[place]?.push(piece.normal);
    }
  }
  return skin.points.map((p, place): Vec3 => {
    const rows = (normals[place] ?? []).map((normal) => ({ normal, by }));
    const shift = leastShift(lid.has(place) ? [...rows, { normal: [0, 0, 1], by: 0 }] : rows);
    return [p[0] + shift[0], p[1] + shift[1], lid.has(place) ? p[2] : p[2] + shift[2]];
  });
};

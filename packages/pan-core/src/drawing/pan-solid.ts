import { type Skin, skinMovedOut } from '../weld/index.js';
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
        skinMovedOut(skin, thickness),
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
  const [inside, outside] = [skinMovedOut(skin, inner), skinMovedOut(skin, outer)];
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

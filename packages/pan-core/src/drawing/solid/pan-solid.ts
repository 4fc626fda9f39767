import { isSheet, type Skin, skinMovedOut } from '../../weld/index.js';
import { type Mesh, meshOfLoops, requireClosed, roundMesh } from './mesh.js';
import { shellLoops } from './sheet-shell.js';

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

/**
 * The pan's sheet as one closed solid, open at the rail: between two faces that stand `inner` and `outer` mm out
 * from the inside face. 0 and the thickness give the metal as it is; less than 0 is inside the oil.
 */
export const hollowSolid = (skin: Skin, inner: number, outer: number): Mesh => {
  const [inside, outside] = [skinMovedOut(skin, inner), skinMovedOut(skin, outer)];
  const shift = inside.length;
  const loops = shellLoops(skin.pieces.filter(isSheet), (place) => place + shift);
  return requireClosed(roundMesh(meshOfLoops([...inside, ...outside], loops)), 'pan of sheet');
};

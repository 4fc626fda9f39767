import { type CuttingPlane, type FlatSegment, sliceLoops } from '../geometry/index.js';
import type { Vec2, Vec3 } from '../numeric/index.js';
import type { PanModel } from './model.js';
import type { Owner } from './panel.js';
import { panelsOf } from './panels.js';
import { platesOf } from './plates.js';

/** Metal as a plane cuts it: the inside face of sheet or block, or a baffle. */
export interface MetalSlice {
  readonly owner: Owner;
  /** The baffle's name; empty for sheet and block. */
  readonly name: string;
  readonly segments: readonly FlatSegment[];
}

/** Every face of sheet, block and baffle that the plane cuts; doors and holes are gaps. */
export const sliceMetal = (model: PanModel, plane: CuttingPlane): readonly MetalSlice[] => {
  const skin = panelsOf(model).map(
    ({ owner, loops }): MetalSlice => ({ owner, name: '', segments: sliceLoops(loops, plane) }),
  );
  const plates = platesOf(model).map(({ baffle, origin, u, v, outlines, openings }): MetalSlice => {
    const lift = ([s, t]: Vec2): Vec3 => [
      origin[0] + s * u[0] + t * v[0],
      origin[1] + s * u[1] + t * v[1],
      origin[2] + s * u[2] + t * v[2],
    ];
    const loops = [...outlines, ...openings.map(({ outline }) => outline)].map((loop) => loop.map(lift));
    return { owner: 'baffle', name: baffle.name, segments: sliceLoops(loops, plane) };
  });
  return [...skin, ...plates].filter(({ segments }) => segments.length > 0);
};

import {
  connectedPieces,
  liftPoint,
  mergePieces,
  type PlaneEquation,
  type Polygon,
  polygonArea,
} from '../geometry/index.js';
import { freeze, scale3 } from '../numeric/index.js';
import type { RoomFace } from './cell.js';
import { flatScale } from './flat-loop.js';
import type { PanModel } from './model.js';
import type { Panel } from './panel.js';

/**
 * The pan's sheet as flat panels: faces with nothing beyond them, merged where plane and owner agree and
 * they share an edge. Faces of the block are left out.
 */
export const panelsOf = (model: Pick<PanModel, 'table' | 'bare'>): readonly Panel[] => {
  const groups = new Map<string, { face: RoomFace; pieces: Polygon[] }>();
  for (const { face, pieces } of model.bare) {
    if (face.tag.owner === 'block') continue;
    const key = `${face.plane}/${face.side}/${face.tag.owner}/${face.tag.index}`;
    const group = groups.get(key) ?? { face, pieces: [] };
    groups.set(key, group);
    group.pieces.push(...pieces);
  }
  return freeze(
    [...groups.values()].flatMap(({ face, pieces }) => {
      const equation = model.table.planes[face.plane] as PlaneEquation;
      const scale = flatScale(equation);
      return connectedPieces(pieces).map((body): Panel => {
        const loops = mergePieces(body).map((loop) => loop.map((p) => liftPoint(equation, p)));
        return {
          owner: face.tag.owner,
          index: face.tag.index,
          plane: face.plane,
          normal: scale3(equation.normal, face.side),
          loops: face.side === 1 ? loops : loops.map((loop) => [...loop].reverse()),
          area: body.reduce((sum, p) => sum + polygonArea(p), 0) * scale,
        };
      });
    }),
  );
};

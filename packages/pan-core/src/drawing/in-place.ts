import { circlePath, polylinePath } from '../geometry/index.js';
import { type PanModel, platesOf } from '../pan/index.js';
import { clearanceHole, flangeOpening, flangeOutline } from '../sheet/index.js';
import { type Skin, skinParts } from '../weld/index.js';
import { extrudedSolid } from './plate-solid.js';
import { type InPlace, sheetShells } from './sheet-shell.js';

/** Every piece of metal of the finished pan in its place: folded sheet, flange and baffles, pan axes. */
export const partsInPlace = async (model: PanModel, skin: Skin): Promise<readonly InPlace[]> => {
  const { design } = model;
  const found: InPlace[] = [...sheetShells(skin, skinParts(model, skin), design.pan.sheet.thickness)];
  found.push({ name: 'flange', mesh: await flange(model) });
  for (const plate of platesOf(model)) {
    const outlines = plate.outlines.map((outline) => polylinePath(outline, true));
    const holes = plate.openings.map(({ outline }) => polylinePath(outline, true));
    const { name, thickness } = plate.baffle;
    found.push({ name, mesh: await extrudedSolid(outlines, holes, thickness, name, plate) });
  }
  return found;
};

const flange = ({ design, profile }: PanModel): Promise<InPlace['mesh']> => {
  const { thickness, fit } = design.pan.flange;
  const holes = design.engine.railHoles.flatMap(({ at, thread }) => {
    const diameter = clearanceHole(thread, fit);
    return diameter === null ? [] : [circlePath(at, diameter / 2)];
  });
  return extrudedSolid(
    [flangeOutline(design)],
    [flangeOpening(design, profile), ...holes],
    thickness,
    'flange',
    {
      origin: [0, 0, -thickness],
      u: [1, 0, 0],
      v: [0, 1, 0],
      normal: [0, 0, 1],
    },
  );
};

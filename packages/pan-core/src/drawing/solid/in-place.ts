import { type Design, type Lid, STAY } from '../../design/index.js';
import { circlePath, pointInPath, polylinePath } from '../../geometry/index.js';
import { add3, scale3, subtract3 } from '../../numeric/index.js';
import { type PanModel, type PickupStay, pickupStay, platesOf, sideSign } from '../../pan/index.js';
import {
  endSealFrame,
  endSealName,
  endSealOutline,
  flangeHoles,
  flangePieces,
  mountHoles,
  TAB_FOOT,
  tabKinds,
} from '../../sheet/index.js';
import { type Skin, skinParts } from '../../weld/index.js';
import { angleSolid } from './angle-solid.js';
import { extrudedSolid } from './plate-solid.js';
import { type InPlace, sheetShells } from './sheet-shell.js';

/** Every piece of metal of the finished pan in its place: folded sheet, flange and baffles, pan axes. */
export const partsInPlace = async (model: PanModel, skin: Skin): Promise<readonly InPlace[]> => {
  const { design } = model;
  const found: InPlace[] = [...sheetShells(skin, skinParts(model, skin), design.pan.sheet.thickness)];
  found.push(...(await flangeInPlace(model)));
  for (const plate of platesOf(model)) {
    const outlines = plate.outlines.map((outline) => polylinePath(outline, true));
    const { baffle } = plate;
    const { name, thickness } = baffle;
    const mounts = baffle.kind === 'lid' ? mountHoles(design, baffle) : [];
    const holes = [
      ...plate.openings.map(({ outline }) => polylinePath(outline, true)),
      ...mounts
        .filter(({ at }) => outlines.some((path) => pointInPath(path, at) === 'inside'))
        .map(({ at, diameter }) => circlePath(at, diameter / 2)),
    ];
    found.push({ name, mesh: await extrudedSolid(outlines, holes, thickness, name, plate) });
    if (baffle.kind === 'lid') found.push(...(await tabsInPlace(design, baffle)));
  }
  const stay = pickupStay(design, model.profile);
  if (stay !== null) found.push(await stayInPlace(stay, design.pan.sheet.bendRadius));
  return found;
};

const LEVEL = { u: [1, 0, 0], v: [0, 1, 0], normal: [0, 0, 1] } as const;

/** The flange's plates with every hole, those drilled after welding too, and the end plates between them. */
const flangeInPlace = async ({ design, profile }: PanModel): Promise<readonly InPlace[]> => {
  const { thickness, endSeals } = design.pan.flange;
  const found: InPlace[] = [];
  for (const { name, outline, openings } of flangePieces(design, profile)) {
    const holes = flangeHoles(design)
      .filter(({ at }) => pointInPath(outline, at) === 'inside')
      .map(({ at, diameter }) => circlePath(at, diameter / 2));
    const frame = { ...LEVEL, origin: [0, 0, -thickness] as const };
    found.push({
      name,
      mesh: await extrudedSolid([outline], [...openings, ...holes], thickness, name, frame),
    });
  }
  for (const seal of endSeals) {
    const name = endSealName(seal);
    const frame = endSealFrame(design, seal);
    found.push({ name, mesh: await extrudedSolid([endSealOutline(seal)], [], thickness, name, frame) });
  }
  return found;
};

const stayInPlace = async (stay: PickupStay, radius: number): Promise<InPlace> => {
  const { width, thickness, seat, along, toward, foot, arm } = stay;
  const origin = subtract3(seat, add3(scale3(toward, foot.hole), scale3(along, width / 2)));
  const angle = { legs: [foot.length, arm.length], thickness, radius, width } as const;
  return {
    name: STAY,
    mesh: await angleSolid(angle, { origin, u: toward, v: [0, 0, 1], normal: along }, STAY),
  };
};

const tabsInPlace = async (design: Design, lid: Lid): Promise<readonly InPlace[]> => {
  const found: InPlace[] = [];
  for (const { name, shelf, width, places } of tabKinds(design, lid))
    for (const { side, x, wall } of places) {
      const out = sideSign(side);
      const angle = {
        legs: [shelf, TAB_FOOT],
        thickness: lid.thickness,
        radius: design.pan.sheet.bendRadius,
        width,
      } as const;
      // u × v: the width runs forward at the left side and rearward at the right one.
      const frame = {
        origin: [x - (out * width) / 2, out * (wall - shelf), -lid.down],
        u: [0, out, 0],
        v: [0, 0, 1],
        normal: [out, 0, 0],
      } as const;
      const what = `${name} ${side} ${x.toFixed(0)}`;
      found.push({ name: what, mesh: await angleSolid(angle, frame, what) });
    }
  return found;
};

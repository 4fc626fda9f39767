import type { Design, Lid, Wall } from '../design/index.js';
import type { Vec3 } from '../numeric/index.js';
import { type PanModel, type Plate, platesOf, sideSign } from '../pan/index.js';
import { doorHeads, TAB_FOOT, tabKinds } from '../sheet/index.js';
import { filletLeg } from './fillet.js';
import { placeOnPlate } from './plate-contact.js';
import { plainLine, rootLength, type SeamLine } from './seam-line.js';
import type { BareSeam } from './weld-prep.js';

/** Both upright edges of every foot: of a lid's tabs on the pan's sides, of a door's stop on its wall. */
export const footSeams = (model: PanModel): readonly BareSeam[] => {
  const { design } = model;
  return [
    ...design.baffles.flatMap((baffle) => (baffle.kind === 'lid' ? tabSeam(design, baffle) : [])),
    ...platesOf(model).flatMap((plate) =>
      plate.baffle.kind === 'wall' ? stopSeam(plate, plate.baffle, design) : [],
    ),
  ];
};

const FILLET = {
  joint: 'fillet',
  side: 'inside',
  run: 'continuous',
  step: 'inside',
} as const;

/** The lid or tray comes out for it. */
const tabSeam = (design: Design, lid: Lid): readonly BareSeam[] => {
  const { thickness, bendRadius } = design.pan.sheet;
  // Beside its bend a foot stands off the wall.
  const [top, bottom] = [-lid.down - bendRadius - lid.thickness, -lid.down - TAB_FOOT];
  const lines = tabKinds(design, lid).flatMap(({ places, width }) =>
    places.flatMap(({ side, x, wall }) =>
      [-width / 2, width / 2].map((aside): SeamLine => {
        const at = (z: number): Vec3 => [x + aside, sideSign(side) * wall, z];
        return plainLine([at(top), at(bottom)]);
      }),
    ),
  );
  if (lines.length === 0 || top <= bottom) return [];
  return [
    {
      ...FILLET,
      name: `tabs of ${lid.name} to the sides`,
      between: [`${lid.name} tab`, 'sides'],
      length: rootLength(lines),
      lines,
      size: filletLeg(lid.thickness, thickness),
      closedBy: null,
    },
  ];
};

const stopSeam = (plate: Plate, wall: Wall, design: Design): readonly BareSeam[] => {
  const lines = doorHeads(plate).flatMap(({ door, foot }): readonly SeamLine[] => {
    if (foot === null) return [];
    // On the face that the flap hangs on.
    const out = door.letsOil === 'forward' || door.letsOil === 'left' ? wall.thickness : 0;
    const [from, to] = foot.up;
    return foot.across.map((u) =>
      plainLine([placeOnPlate(plate, [u, from], out), placeOnPlate(plate, [u, to], out)]),
    );
  });
  if (lines.length === 0) return [];
  const lids = design.baffles.filter((b) => b.kind === 'lid' && b.fixed === 'welded');
  return [
    {
      ...FILLET,
      name: `door stops of ${wall.name} to it`,
      between: [`${wall.name} door stop`, wall.name],
      length: rootLength(lines),
      lines,
      size: filletLeg(wall.thickness, wall.thickness),
      closedBy: lids.length === 0 ? null : lids.map(({ name }) => name).join(' and '),
    },
  ];
};

import type { Design } from '../design/index.js';
import { createPlaneTable } from '../geometry/index.js';
import { freeze } from '../numeric/index.js';
import { bodyPieces, wingPieces } from './outside-body.js';
import { endPlatePieces } from './outside-end-plate.js';
import { beadSolids, boltSolids, drainSolids } from './outside-fitting.js';
import { flangeOutline, platePieces } from './outside-flange.js';
import { notchedPieces } from './outside-notch.js';
import { outsideLine } from './outside-profile.js';
import { outerSolid } from './outside-solid.js';
import type { OuterSolid } from './panel.js';
import type { Profile } from './profile.js';

/**
 * The pan's outside as a union of convex solids in pan axes, mm: body, wings, flange plate, bolt heads,
 * drain plug and weld beads. Nowhere does it lie inside the metal; where it is fuller (bends, round parts,
 * mitred corners) it is so by at most 0.005 mm on bends and 0.3 mm on round parts.
 */
export const outerSolids = (design: Design, profile: Profile): readonly OuterSolid[] => {
  const table = createPlaneTable();
  const line = outsideLine(design, profile);
  const { flange, wings } = design.pan;
  const shell = notchedPieces(table, design, [
    ...bodyPieces(table, design, line).map((piece) => ({ name: 'pan', piece })),
    ...wings.flatMap((wing) =>
      wingPieces(table, design, line, wing).map((piece) => ({ name: wing.name, piece })),
    ),
  ]);
  const plate = platePieces(table, flangeOutline(design), -flange.thickness, 0, 'flange');
  return freeze([
    ...shell.map(({ name, piece }) => outerSolid(name, 'shell', piece)),
    ...plate.map((piece) => outerSolid('flange', 'flange', piece)),
    ...endPlatePieces(table, design).map((piece) => outerSolid('end plate', 'flange', piece)),
    ...boltSolids(design),
    ...drainSolids(design, line),
    ...beadSolids(table, design, line),
  ]);
};

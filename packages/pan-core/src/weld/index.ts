export {
  type Billed,
  billLines,
  type Cost,
  type CostLine,
  countedWork,
  type Quantities,
  type SheetNeed,
} from './bill.js';
export { type Caution, cautionsFor } from './caution.js';
export { type Cleaning, cleaningFor } from './cleaning.js';
export { type Filler, fillerFor } from './filler.js';
export { filletLeg, filletMass, filletThroat, heatInput } from './fillet.js';
export { laidLength, type Process, type SeamHeat, seamHeat } from './heat.js';
export { joinPoints } from './join-points.js';
export { AIR, PSI, pressureForce, storedEnergy, TEST_PSI } from './leak-test.js';
export { leastShift, type Push } from './least-shift.js';
export { processNumbers } from './process-number.js';
export { type Run, runOrder, type SeamSide } from './run-order.js';
export { SAYINGS } from './sayings.js';
export type { Seam, SeamPrep, SeamStep } from './seam.js';
export type { SeamLine } from './seam-line.js';
export { panSeams } from './seams.js';
export { isSheet, panSkin, type Skin, type SkinPiece } from './skin.js';
export { skinMovedOut } from './skin-offset.js';
export { type SkinParts, skinParts } from './skin-part.js';
export { PRACTICE, type WeldStep, weldSteps } from './weld-step.js';

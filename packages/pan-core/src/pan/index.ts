export type { Barrier, Passage, PassageKind } from './barrier.js';
export { buildPan } from './build.js';
export type { FaceOwner, Room, RoomFace, Zone } from './cell.js';
export { type Fastener, fastenerFor } from './fastener.js';
export { depthAt, type FloorPiece, formedFloor, sharpFloor, stepTop } from './floor-line.js';
export { halfWidthAt, sideSign } from './half-width.js';
export {
  type LidPlan,
  type LouvreCut,
  lidPlan,
  type SlotCut,
  shares,
} from './lid-opening.js';
export { type MetalSlice, sliceMetal } from './metal-slice.js';
export type { PanModel } from './model.js';
export { holds, type Mouth } from './mouth.js';
export { notchPlanes } from './notch-cut.js';
export type { Blocked, Cover, Opening } from './opening.js';
export { outerSolids } from './outside.js';
export { endPlateReach, endSealSizes, railHalfChord } from './outside-end-plate.js';
export { BEAD_LEG } from './outside-fitting.js';
export { convexParts } from './outside-flange.js';
export { insideLine, type OutsideLine, outsideLine, profilePieceNames } from './outside-profile.js';
export type { OuterRole, OuterSolid, Owner, Panel } from './panel.js';
export { panelsOf } from './panels.js';
export { type PickupStay, pickupStay } from './pickup-stay.js';
export { pickupTube, tubeOutside } from './pickup-tube.js';
export type { Plate, PlateOpening } from './plate.js';
export { platesOf } from './plates.js';
export { type Corner, floorProfile, type Profile } from './profile.js';
export {
  BEND_RADIUS,
  type TubeList,
  type TubeStep,
  type TubeStraight,
  tubeBends,
} from './tube-bend.js';
export { type WingPlanes, wingPlanes } from './wing-room.js';

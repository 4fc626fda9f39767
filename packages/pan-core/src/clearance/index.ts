export type { MeetMeasure } from './body.js';
export { type ChassisAxes, chassisAxes } from './chassis-axes.js';
export type { ShiftRange } from './clear-search.js';
export type { Clearance, ClearanceKind } from './clearance.js';
export { clearances } from './clearances.js';
export { type JackName, mountsOf } from './engine-jack.js';
export { movementWords } from './engine-motion.js';
export { type RaisedWay, type Removal, removalOf } from './removal.js';
export type { PanPlace } from './removal-scene.js';
export {
  type EngineRoom,
  type RoomMap,
  type RoomPlace,
  type RoomSide,
  roomAtTilt,
  roomToMove,
  type TiltRoom,
} from './room.js';
export { MOST_GIVE, type RoomGive, roomGives } from './room-give.js';
export { CAP as MOST_SPARE, type RoomPair, roomPairs, type Wanted } from './room-space.js';
export { type ThrowClearance, throwClearances } from './throws.js';

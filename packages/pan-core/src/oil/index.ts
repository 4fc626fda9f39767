export { type TrappedAir, trappedAir } from './air.js';
export {
  createOilSystem,
  type OilAnswer,
  type OilSystem,
  type PickupAnswer,
  type PoolAnswer,
  rampAnswer,
  restAnswer,
} from './answer.js';
export { AT_REST, type Attitude, attitudeOf, between } from './attitude.js';
export { type Body, createBody, createOriented, heightOf, type Oriented, orient } from './body.js';
export { type CrankDip, crankDips } from './crank-dip.js';
export { criticalSubmergence, GRAVITY, mouthFroude, mouthSpeed } from './critical.js';
export { densityAt60F, oilDensity } from './density.js';
export { type DepthRow, depthTable } from './depth-table.js';
export {
  BETWEEN_MARKS,
  type DipstickAnswer,
  dipstickAnswer,
  type SlopeError,
  type StickMark,
  TIP_GAP,
} from './dipstick.js';
export { atSpeed, leastHeldUp, oilAtSpeed, oilIn } from './engine-speed.js';
export { colebrook, frictionFactor, fullyRough, haaland } from './friction.js';
export { type Inventory, inventoryOf } from './inventory.js';
export { type LeastFill, leastFill, volumeToRail } from './least-fill.js';
export { createMeasure, type Measure, measureCells, solveAt, solveLevel } from './level.js';
export { sweepLevels } from './level-sweep.js';
export { CLOSE_G, type Limit, limitRing, limitToward, loadToward, MOST_G } from './limit.js';
export type { Lip } from './lip.js';
export {
  type HotGrade,
  hotGrades,
  isoSpan,
  type OilGrade,
  readOilGrade,
  type WinterGrade,
  winterGrades,
} from './oil-grade.js';
export { densityOf, kinematicViscosity, type Oil, oilProperties } from './oil-properties.js';
export { type OpenSurface, openSurfaces } from './open-surface.js';
export { cellsAt, depthUnderOil } from './plumb.js';
export { type OilSlice, type RoomSlice, sliceOil, sliceRooms } from './pool-slice.js';
export { type LevelledRoom, levelRooms, type RoomOil, roomsOfAnswer, upOfRise } from './room-oil.js';
export { shallowFall } from './shallow-fall.js';
export { type PoolSlosh, SLOSH_DAMPING, sloshFrequency, sloshOf, stepOvershoot } from './slosh.js';
export { pointOnStick, type StickCrossing, type StickPath, stickPath, tubeCrossings } from './stick-path.js';
export { type Ground, LEVEL_GROUND, readStick, type StickReading } from './stick-reading.js';
export { type Suction, suctionAt, suctionRise, warmEnough } from './suction.js';
export * from './surge/index.js';
export { type NamedRoom, namedRooms } from './surge/named-room.js';
export {
  bendRatio,
  type Entrance,
  entranceLoss,
  type Flow,
  type Tube,
  type TubeBend,
  type TubeLoss,
  tubeLoss,
} from './tube-loss.js';
export { tubeRun } from './tube-run.js';
export { undrained } from './undrained.js';
export {
  type ViscosityLine,
  type ViscosityPoint,
  viscosityAt,
  viscosityAt40,
  viscosityAt100,
  viscosityIndex,
  viscosityLine,
} from './viscosity.js';

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
export { type DepthRow, depthTable } from './depth-table.js';
export { type Inventory, inventoryOf } from './inventory.js';
export { createMeasure, type Measure, measureCells, solveLevel } from './level.js';
export { type Limit, limitRing, limitToward, loadToward, MOST_G } from './limit.js';
export type { Lip } from './lip.js';

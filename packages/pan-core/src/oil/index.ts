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
export { createMeasure, type Measure, measureCells, solveLevel } from './level.js';

export * from './check/index.js';
export * from './clearance/index.js';
export * from './design/index.js';
export * from './drawing/index.js';
export * from './errors/index.js';
export {
  type Affine,
  bulgeCurve,
  type Curve,
  type CuttingPlane,
  circleCurve,
  type FlatSegment,
  flatOn,
  mapArea,
  moveCurve,
  NO_MAP,
  type NurbsCurve,
  nurbsFault,
  pathBox,
  type StlReader,
  scaleMap,
  shiftMap,
  sliceLoops,
  splineThrough,
  stlReader,
  type TriangleSoup,
  thenMap,
  turnMap,
} from './geometry/index.js';
export { tenTo, type Vec3 } from './numeric/index.js';
export * from './oil/index.js';
export * from './pan/index.js';
export * from './sheet/index.js';
export * from './size/index.js';
export * from './units/index.js';
export * from './weld/index.js';

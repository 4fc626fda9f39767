export { choleskyFactor, choleskyInverse, choleskySolve, type Symmetric } from './cholesky.js';
export { createDormandPrince, type DormandPrince, type Slope } from './dormand-prince.js';
export { findRoot } from './find-root.js';
export { freeze } from './freeze.js';
export { type LinearAnswer, type LinearProgram, solveLinear } from './linear-program.js';
export { normalAbove, normalTail } from './normal.js';
export { power, tenTo } from './power.js';
export { seededStream } from './seeded.js';
export { stepFactor } from './step-length.js';
export { type EigenPair, symmetricEigen } from './symmetric-eigen.js';
export {
  add3,
  cross3,
  dot3,
  length3,
  scale3,
  subtract3,
  unit3,
  type Vec2,
  type Vec3,
} from './vector.js';

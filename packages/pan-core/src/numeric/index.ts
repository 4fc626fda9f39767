export { freeze } from './freeze.js';
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

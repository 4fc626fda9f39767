export type { Clearance, ClearanceKind } from './clearance.js';
export { clearances } from './clearances.js';
export { movementWords } from './engine-motion.js';

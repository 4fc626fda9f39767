export type { Clearance, ClearanceKind } from './clearance.js';
export { clearances } from './clearances.js';

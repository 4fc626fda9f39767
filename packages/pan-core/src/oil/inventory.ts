import type { OilPlan } from '../design/index.js';

/** Where the poured oil is, mm³. `heldUp` includes the galleries, so the two states never take both off. */
export interface Inventory {
  readonly poured: number;
  readonly stoppedInPan: number;
  readonly runningInPan: number;
}

/** How much of the poured oil is in the pan, stopped and running, in mm³. */
export const inventoryOf = (oil: OilPlan): Inventory => ({
  poured: oil.fill,
  stoppedInPan: Math.max(0, oil.fill - oil.filter - oil.galleries),
  runningInPan: Math.max(0, oil.fill - oil.filter - oil.heldUp),
});

import type { Design } from '../design/index.js';
import {
  inventoryOf,
  type Oil,
  type OilSystem,
  oilProperties,
  restAnswer,
  suctionRise,
  type Tube,
  tubeRun,
} from '../oil/index.js';

/** N/mm² in a bar. */
export const BAR = 0.1;

/** The way from the oil into the pump: mouth, tube and oil, and where its running level stands. */
export interface Supply {
  readonly design: Design;
  readonly oil: Oil;
  readonly tube: Tube | null;
  /** Port over running oil at rest, mm. */
  readonly rise: number | null;
  /** Mouth under running oil at rest, mm. */
  readonly under: number;
}

export const supplyOf = (design: Design, system: OilSystem): Supply => {
  const { pools, pickup } = restAnswer(system, inventoryOf(design.oil).runningInPan);
  const level = pools.find((p) => p.hasPickup)?.level;
  return {
    design,
    oil: oilProperties(design.oil),
    tube: tubeRun(design.pickup, system.model.mouth.centre, design.engine.pumpInlet),
    rise: level === undefined ? null : suctionRise(system, level),
    under: pickup.submergence,
  };
};

import type { Design } from '../design/index.js';
import { freeze } from '../numeric/index.js';
import { type OilSystem, type Suction, suctionAt, warmEnough } from '../oil/index.js';
import { limitFor } from './row.js';
import { BAR, supplyOf } from './supply.js';
import practice from './supply-practice.json' with { type: 'json' };

/** The pump's pull at one flow, and where it goes. */
export interface SupplyPull {
  readonly flow_L_min: number;
  readonly speed_m_s: number;
  readonly reynolds: number;
  readonly tube_bar: number;
  readonly bends_bar: number;
  readonly mouth_bar: number;
  readonly motion_bar: number;
  readonly lift_bar: number;
  readonly pull_bar: number;
}

/** The pump's pull with oil of one temperature. */
export interface SupplyRow {
  readonly temperature_C: number;
  readonly viscosity_mm2_s: number;
  readonly density_kg_m3: number;
  readonly cranking: SupplyPull;
  readonly full_flow: SupplyPull;
}

/** The pull from deep cold to hot oil. */
export interface SupplyReport {
  readonly tube_length_mm: number;
  readonly bore_mm: number;
  readonly bends_deg: number;
  readonly rise_mm: number;
  readonly limit_bar: number;
  /** Temperature from which full flow stays within the limit; null when it never does. */
  readonly full_flow_from_C: number | null;
  readonly rows: readonly SupplyRow[];
}

const TEMPERATURES = [-30, -20, -10, 0, 20, 40, 70, 100, 130];

/** null where the tube's way or the pump's flow is not known. */
export const supplyReport = (design: Design, system: OilSystem): SupplyReport | null => {
  const { oil, tube, rise } = supplyOf(design, system);
  const { pump, cranking } = design.oil;
  if (tube === null || rise === null || pump === null || cranking === null) return null;
  const limit = limitFor(design.limits, ['suction'], practice.suction);
  return freeze({
    tube_length_mm: tube.length,
    bore_mm: tube.bore,
    bends_deg: (tube.bends.reduce((sum, bend) => sum + bend.angle, 0) * 180) / Math.PI,
    rise_mm: rise,
    limit_bar: limit,
    full_flow_from_C: warmEnough(tube, oil, pump, rise, limit * BAR),
    rows: TEMPERATURES.map((celsius): SupplyRow => {
      const [slow, full] = [cranking, pump].map((rate) => suctionAt(tube, oil, celsius, rate, rise)) as [
        Suction,
        Suction,
      ];
      return {
        temperature_C: celsius,
        viscosity_mm2_s: full.viscosity,
        density_kg_m3: full.density,
        cranking: pullOf(slow),
        full_flow: pullOf(full),
      };
    }),
  });
};

const pullOf = (s: Suction): SupplyPull => ({
  flow_L_min: (s.rate * 60) / 1e6,
  speed_m_s: s.speed / 1000,
  reynolds: s.reynolds,
  tube_bar: s.straight / BAR,
  bends_bar: s.bends / BAR,
  mouth_bar: s.entrance / BAR,
  motion_bar: s.motion / BAR,
  lift_bar: s.lift / BAR,
  pull_bar: s.pull / BAR,
});

import type { Design, Load } from '../design/index.js';
import { freeze } from '../numeric/index.js';
import { criticalSubmergence, type OilAnswer, type OilSystem, rampAnswer } from '../oil/index.js';

/** One state of `pan level`; the keys end in their units. */
export interface LevelState {
  readonly pools: readonly {
    readonly volume_L: number;
    readonly surface_mm: number;
    readonly has_pickup: boolean;
  }[];
  readonly pickup: {
    readonly submergence_mm: number;
    readonly covered: boolean;
    /** Indicative for oil: the rule comes from water. Null when the pump's flow is not known. */
    readonly critical_mm: number | null;
    readonly draw_s: number | null;
  };
}

/** Where the oil lies in one attitude, held and settled. */
export interface LevelReport {
  readonly attitude: {
    readonly forward_g: number;
    readonly left_g: number;
    readonly grade_deg: number;
    readonly surface_deg: number;
  };
  readonly oil: { readonly in_pan_L: number };
  readonly settled: LevelState;
  readonly held: LevelState;
}

/** Pools and pickup at one load, ramped from rest, held and settled. `volume` in mm³ in the pan. */
export const levelReport = (design: Design, system: OilSystem, volume: number, load: Load): LevelReport => {
  const settled = rampAnswer(system, volume, load, 'settled');
  const held = rampAnswer(system, volume, load, 'held');
  const state = (a: OilAnswer): LevelState => ({
    pools: a.pools.map((p) => ({ volume_L: p.volume / 1e6, surface_mm: p.surface, has_pickup: p.hasPickup })),
    pickup: {
      submergence_mm: a.pickup.submergence,
      covered: a.pickup.covered,
      critical_mm:
        design.oil.pump === null ? null : criticalSubmergence(design.pickup.mouth, design.oil.pump),
      draw_s: a.pickup.drawSeconds,
    },
  });
  return freeze({
    attitude: {
      forward_g: load.forward,
      left_g: load.left,
      grade_deg: (load.grade * 180) / Math.PI,
      surface_deg: (Math.acos(Math.min(1, settled.up[2])) * 180) / Math.PI,
    },
    oil: { in_pan_L: volume / 1e6 },
    settled: state(settled),
    held: state(held),
  });
};

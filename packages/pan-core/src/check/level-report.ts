import type { Design, Load, OilPlan } from '../design/index.js';
import { freeze } from '../numeric/index.js';
import {
  criticalSubmergence,
  type OilAnswer,
  type OilSystem,
  rampAnswer,
  SLOSH_DAMPING,
  sloshOf,
  stepOvershoot,
} from '../oil/index.js';

/** One state of `pan level`; the keys end in their units. */
export interface LevelState {
  readonly pools: readonly {
    readonly volume_L: number;
    readonly surface_mm: number;
    readonly has_pickup: boolean;
    /** First-mode period of its surface along and across the car, s; null where it has none. */
    readonly period_fore_s: number | null;
    readonly period_side_s: number | null;
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
  readonly slosh: {
    /** Share of critical damping taken for a bare surface. */
    readonly damping: number;
    /** A load that comes on at once swings a surface this many times as far as it then stands. */
    readonly step_overshoot: number;
    readonly not_modelled: string;
  };
}

/** What the periods leave out, said wherever they are shown. */
export const SLOSH_LIMITS =
  'Periods are of the first small wave in a box as long, wide and deep as the pool; sloping floors, baffles inside a pool, breaking waves and splash are not modelled.';

/**
 * Pools and pickup at one load, ramped from rest, held and settled. `volume` in mm³ in the pan; the pump's flow is the
 * design's unless given.
 */
export const levelReport = (
  design: Design,
  system: OilSystem,
  volume: number,
  load: Load,
  { pump }: Pick<OilPlan, 'pump'> = design.oil,
): LevelReport =>
  levelReportOf(
    design,
    system,
    volume,
    { settled: rampAnswer(system, volume, load, 'settled'), held: rampAnswer(system, volume, load, 'held') },
    { pump },
  );

/** The same from answers that are known already, both at one load. */
export const levelReportOf = (
  design: Design,
  system: OilSystem,
  volume: number,
  { settled, held }: Readonly<Record<'settled' | 'held', OilAnswer>>,
  { pump }: Pick<OilPlan, 'pump'> = design.oil,
): LevelReport => {
  const { load } = settled;
  const state = (a: OilAnswer): LevelState => {
    const slosh = sloshOf(system, a);
    return {
      pools: a.pools.map((p, i) => ({
        volume_L: p.volume / 1e6,
        surface_mm: p.surface,
        has_pickup: p.hasPickup,
        period_fore_s: slosh[i]?.fore ?? null,
        period_side_s: slosh[i]?.side ?? null,
      })),
      pickup: {
        submergence_mm: a.pickup.submergence,
        covered: a.pickup.covered,
        critical_mm: pump === null ? null : criticalSubmergence(design.pickup.mouth, pump),
        draw_s: pump === null ? null : a.pickup.spare / pump,
      },
    };
  };
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
    slosh: {
      damping: SLOSH_DAMPING,
      step_overshoot: stepOvershoot(SLOSH_DAMPING),
      not_modelled: SLOSH_LIMITS,
    },
  });
};

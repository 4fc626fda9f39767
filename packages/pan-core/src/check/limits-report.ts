import type { Manoeuvre, ReadDesign, Unknown } from '../design/index.js';
import { freeze } from '../numeric/index.js';
import { type Limit, leastFill, limitRing, limitToward, type OilSystem } from '../oil/index.js';
import { SAYINGS } from '../weld/index.js';
import { LIFT, lesser, limitChanges } from './limit-change.js';
import { mouthCase } from './mouth-case.js';
import { sweepOverOil } from './sweep.js';

/** One direction of `pan limits`: 0 braking, 90 left turn, 180 accelerating, 270 right turn. */
export interface LimitDirection {
  readonly toward_deg: number;
  /** The lesser of the two; null when the mouth is still covered at 3 g, 0 when it is bared at rest. */
  readonly limit_g: number | null;
  readonly held_g: number | null;
  readonly settled_g: number | null;
  readonly binding: string;
}

/** A manoeuvre of the design against the limit in its own direction, and the least oil that carries it. */
export interface LimitCase {
  readonly name: string;
  /** null for a case that only stands on a grade. */
  readonly toward_deg: number | null;
  /** Engine speed, where the file says one or gives oil by it. */
  readonly rpm: number | null;
  /** Oil in the pan at that speed. */
  readonly in_pan_L: number;
  readonly asks_g: number;
  /** In its direction on a level road, straight from rest; null past 3 g or without a direction. */
  readonly limit_g: number | null;
  readonly covered: boolean;
  /** Oil in the pan; null when no fill to the rail carries it. */
  readonly least_fill_L: number | null;
  readonly least_state: 'rest' | 'held' | 'settled' | null;
  readonly least_binding: string;
  /** False: less oil somewhere covered what more bared, so the least fill counts from above the last baring. */
  readonly monotone: boolean;
  /** Oil at rest under the rods with that fill; null when crank or throws are not known. */
  readonly under_rods_mm: number | null;
}

/** The load at which the mouth first bares, in every direction, and the least oil for each case. */
export interface LimitsReport {
  readonly title: string;
  readonly in_pan_L: number;
  readonly directions: readonly LimitDirection[];
  /** The direction that bares first, or null when none does. */
  readonly worst: (LimitDirection & { readonly load: string }) | null;
  /** What would lift it by `lift_g`, each tried; the smallest of its kind. */
  readonly changes: readonly {
    readonly kind: string;
    readonly change: string;
    readonly limit_g: number | null;
    readonly lasts_s: number | null;
  }[];
  /** Kinds of change of which none lifts it so far: the best of those tried. */
  readonly no_help: readonly {
    readonly kind: string;
    readonly change: string;
    readonly limit_g: number | null;
  }[];
  readonly lift_g: number;
  readonly cases: readonly LimitCase[];
  /** What the limits would need and the file does not say. */
  readonly unknown: readonly Unknown[];
  readonly sayings: readonly string[];
}

/**
 * Largest g before the mouth bares in each direction of a ring, what lifts the worst, and the least oil for
 * every manoeuvre. `volume` in mm³ in the pan; `volumeIn` where a manoeuvre's engine speed changes it.
 */
export const limitsReport = (
  { design, unknown }: ReadDesign,
  system: OilSystem,
  volume: number,
  ring: readonly Limit[] = limitRing(system, volume),
  volumeIn: (manoeuvre: Manoeuvre) => number = () => volume,
): LimitsReport => {
  const worst = ring.reduce<Limit | null>(
    (a, b) => (lesser(b) === null || (a !== null && (lesser(a) ?? 0) <= (lesser(b) ?? 0)) ? a : b),
    null,
  );
  const tried = worst === null ? [] : limitChanges(system, volume, worst);
  return freeze({
    title: design.title,
    in_pan_L: volume / 1e6,
    directions: ring.map(directionOf),
    worst: worst === null ? null : { ...directionOf(worst), load: wordsFor(worst) },
    changes: tried
      .filter(({ lifts }) => lifts)
      .map(({ kind, change, limit, lasts }) => ({ kind, change, limit_g: limit, lasts_s: lasts })),
    no_help: tried
      .filter(({ lifts }) => !lifts)
      .map(({ kind, change, limit }) => ({ kind, change, limit_g: limit })),
    lift_g: LIFT,
    cases: design.manoeuvres.map((manoeuvre) => caseOf(system, volumeIn(manoeuvre), manoeuvre)),
    unknown: unknown.filter(
      ({ path }) => path[0] === 'oil' || path.includes('tilt') || path.includes('crank'),
    ),
    sayings: [`${SAYINGS.geometry}.`],
  });
};

const directionOf = (limit: Limit): LimitDirection => ({
  toward_deg: limit.toward,
  limit_g: lesser(limit),
  held_g: limit.held,
  settled_g: limit.settled,
  binding: limit.binding,
});

const SECTORS = [
  'braking',
  'braking into a left turn',
  'left turn',
  'accelerating out of a left turn',
  'accelerating',
  'accelerating out of a right turn',
  'right turn',
  'braking into a right turn',
] as const;

/** The direction as a driver would say it. */
const wordsFor = ({ toward }: Limit): string => {
  const pure = [0, 90, 180, 270].find((d) => Math.abs(d - toward) < 1e-9);
  if (pure !== undefined) return SECTORS[pure / 45] as string;
  return SECTORS[2 * Math.floor(toward / 90) + 1] as string;
};

/** The direction of a load in degrees, counted as the ring counts. */
export const towardOf = ({ forward, left }: Pick<Manoeuvre, 'forward' | 'left'>): number => {
  const deg = (Math.atan2(left, -forward) * 180) / Math.PI;
  return deg < 0 ? deg + 360 : deg;
};

const caseOf = (system: OilSystem, volume: number, manoeuvre: Manoeuvre): LimitCase => {
  const asks = Math.hypot(manoeuvre.forward, manoeuvre.left);
  const toward = asks === 0 ? null : towardOf(manoeuvre);
  const limit = toward === null ? null : lesser(limitToward(system, volume, toward));
  const least = leastFill(system, manoeuvre);
  return {
    name: manoeuvre.name,
    toward_deg: toward,
    rpm: manoeuvre.rpm ?? null,
    in_pan_L: volume / 1e6,
    asks_g: asks,
    limit_g: limit,
    covered: mouthCase(system, manoeuvre, [volume]).worst > 0,
    least_fill_L: least.volume === null ? null : least.volume / 1e6,
    least_state: least.state,
    least_binding: least.binding,
    monotone: least.monotone,
    under_rods_mm: least.volume === null ? null : sweepOverOil(system, least.volume),
  };
};

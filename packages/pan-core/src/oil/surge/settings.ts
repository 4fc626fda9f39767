import type { Assumption, Design, OilPlan } from '../../design/index.js';
import type { Vec3 } from '../../numeric/index.js';
import { oilAtSpeed } from '../engine-speed.js';
import { inventoryOf } from '../inventory.js';
import { kinematicViscosity, oilProperties } from '../oil-properties.js';
import { practice, practiceNote } from './practice.js';

/** Where the oil held up in the engine comes back: at an end of the pan, over the crank throws, or at a point. */
export type ReturnPlace = 'front' | 'rear' | 'throws' | Vec3;

/** Oil that stands in the bay around a point when a run starts, mm³. */
export interface PlacedOil {
  readonly at: Vec3;
  readonly volume: number;
}

/** What a run may be told; anything left out is taken from the design or from common practice. */
export interface SurgeOptions {
  /** Oil in the pan at the start, mm³; else what a running engine leaves there. */
  readonly volume?: number;
  /** Poured instead of what the design pours, mm³; not with `volume`. */
  readonly poured?: number;
  /** Engine speed, rev/min, where the design gives held-up oil or pump flow by it. */
  readonly rpm?: number;
  /** Instead of oil at rest: oil that something holds back until the run starts. */
  readonly placed?: readonly PlacedOil[];
  /** Kinematic, mm²/s; else the design's oil at 100 °C. */
  readonly viscosity?: number;
  /** A discharge coefficient for every opening, whatever the speed; else by opening and Reynolds number. */
  readonly discharge?: number;
  /** false: every surface follows gravity at once. */
  readonly swings?: boolean;
  readonly damping?: number;
  /** Share of a door's area that leaks when it is shut, 0–1. */
  readonly doorLeak?: number;
  /** Head that holds a door fully open, mm; infinite: it never opens. */
  readonly doorHead?: number;
  readonly doorSeconds?: number;
  /** mm³/s; null: no pump. Else the design's. */
  readonly pump?: number | null;
  readonly returnTo?: ReturnPlace;
  /** Mean time from the mouth back into the pan, s. */
  readonly returnSeconds?: number;
  /** Error allowed in each step, as a share of the oil; 1e-4 unless said. */
  readonly tolerance?: number;
  /** Time between rows of the series, s. */
  readonly every?: number;
  /** Called now and then with the share done, 0–1; return false to stop. */
  readonly progress?: (share: number) => boolean;
}

/** Options with every gap filled. */
export interface SurgeSettings {
  readonly volume: number;
  readonly placed: readonly PlacedOil[] | null;
  readonly viscosity: number;
  readonly discharge: number | null;
  readonly swings: boolean;
  readonly damping: number;
  readonly doorLeak: number;
  readonly doorHead: number;
  readonly doorSeconds: number;
  readonly pump: number | null;
  readonly returnTo: ReturnPlace;
  readonly returnSeconds: number;
  readonly tolerance: number;
  readonly assumed: readonly Assumption[];
}

const USUAL_TOLERANCE = 1e-4;
/** A shorter stay in the engine than this is taken as this, s. */
const LEAST_RETURN = 0.05;

export const settingsFor = (design: Design, options: SurgeOptions): SurgeSettings => {
  const { engine } = design;
  const oil = { ...oilAtSpeed(design.oil, options.rpm), fill: options.poured ?? design.oil.fill };
  const assumed: Assumption[] = [];
  const usual = (
    given: number | undefined,
    name: 'damping' | 'doorLeak' | 'doorHead' | 'doorSeconds',
  ): number => {
    if (given !== undefined) return given;
    assumed.push(practiceNote(name));
    return practice(name);
  };
  const doors = design.baffles.some((b) => b.kind === 'wall' && b.doors.length > 0);
  const door = (given: number | undefined, name: 'doorLeak' | 'doorHead' | 'doorSeconds'): number =>
    doors ? usual(given, name) : (given ?? practice(name));
  const swings = options.swings ?? true;
  const pump = options.pump === undefined ? oil.pump : options.pump;
  return {
    volume:
      options.placed?.reduce((sum, p) => sum + p.volume, 0) ??
      options.volume ??
      inventoryOf(oil).runningInPan,
    placed: options.placed ?? null,
    viscosity: options.viscosity ?? hotViscosity(oil, assumed),
    discharge: options.discharge ?? null,
    swings,
    damping: swings ? usual(options.damping, 'damping') : (options.damping ?? practice('damping')),
    doorLeak: door(options.doorLeak, 'doorLeak'),
    doorHead: door(options.doorHead, 'doorHead'),
    doorSeconds: door(options.doorSeconds, 'doorSeconds'),
    pump,
    returnTo: options.returnTo ?? usualReturn(engine.crank?.throws ?? null, assumed),
    returnSeconds: Math.max(LEAST_RETURN, options.returnSeconds ?? stay(oil.heldUp, pump, assumed)),
    tolerance: options.tolerance ?? USUAL_TOLERANCE,
    assumed,
  };
};

const hotViscosity = (plan: OilPlan, assumed: Assumption[]): number => {
  const oil = oilProperties(plan);
  assumed.push(...oil.assumed, practiceNote('celsius'));
  return kinematicViscosity(oil, practice('celsius'));
};

const usualReturn = (throws: readonly number[] | null, assumed: Assumption[]): ReturnPlace => {
  const known = throws !== null && throws.length > 0;
  assumed.push({
    path: ['oil comes back'],
    value: known ? 'over the crank throws' : 'at the front',
    why: 'common practice, no source',
  });
  return known ? 'throws' : 'front';
};

/** Oil stays in a running engine as long as the pump takes to move what is held up there. */
const stay = (heldUp: number, pump: number | null, assumed: Assumption[]): number => {
  if (pump !== null && pump > 0 && heldUp > 0) return heldUp / pump;
  if (pump !== null) assumed.push(practiceNote('returnSeconds'));
  return practice('returnSeconds');
};

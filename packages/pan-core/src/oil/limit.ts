import type { Load } from '../design/index.js';
import { freeze } from '../numeric/index.js';
import { type OilSystem, restAnswer } from './answer.js';
import { AT_REST } from './attitude.js';
import { createOriented } from './body.js';
import { type Lip, lipOf } from './lip.js';
import { submergenceOf } from './mouth-depth.js';
import { createScene, DRY, levelOf, type Pool, type PoolState, type Scene } from './pools.js';
import { aim, ramp } from './ramp.js';
import { settle } from './settle.js';

/** Where the mouth first bares as the load grows in one direction. */
export interface Limit {
  /** Degrees round the car: 0 braking, 90 left turn, 180 accelerating, 270 right turn. */
  readonly toward: number;
  /** g at first baring, or null when the mouth is still covered at `MOST_G`; 0 when bared at rest. */
  readonly held: number | null;
  readonly settled: number | null;
  /** What holds the oil of the lesser of the two, in words. */
  readonly binding: string;
  readonly lip: Lip | null;
}

/** Past this no direction is followed, g. */
export const MOST_G = 3;
/** How closely a first baring is found, g. */
const CLOSE = 1e-6;

/** A load of g in a direction: a = (−cos θ, +sin θ)·g, θ in degrees. */
export const loadToward = (toward: number, g: number, grade = 0): Load => {
  const t = (toward * Math.PI) / 180;
  const clean = (v: number): number => (Math.abs(v) < 1e-15 ? 0 : v);
  return { forward: -clean(Math.cos(t)) * g + 0, left: clean(Math.sin(t)) * g + 0, grade };
};

/**
 * First baring of the mouth in each of `count` directions, ramped from rest, held and settled.
 *
 * @param volume oil in the pan, mm³
 */
export const limitRing = (system: OilSystem, volume: number, count = 72): readonly Limit[] =>
  freeze(Array.from({ length: count }, (_, i) => limitToward(system, volume, (360 * i) / count)));

export const limitToward = (system: OilSystem, volume: number, toward: number): Limit => {
  const rest = restAnswer(system, volume);
  if (!rest.pickup.covered) {
    return { toward, held: 0, settled: 0, binding: 'bared at rest: too little oil', lip: null };
  }
  const held = firstBaring(system, rest.rest.state, toward, 'held');
  const settled = firstBaring(system, rest.rest.state, toward, 'settled');
  const least = (held.g ?? MOST_G) <= (settled.g ?? MOST_G) ? held : settled;
  return { toward, held: held.g, settled: settled.g, binding: bindingOf(least), lip: least.lip };
};

interface Baring {
  readonly g: number | null;
  readonly lip: Lip | null;
}

const firstBaring = (
  system: OilSystem,
  start: PoolState,
  toward: number,
  gating: 'held' | 'settled',
): Baring => {
  const { model, body, ways } = system;
  const scene = createScene(createOriented(body), ways[gating]);
  const load = (g: number): Load => loadToward(toward, g);
  let [before, state] = [0, start];
  let found: Baring = { g: null, lip: null };
  ramp(model.design, scene, start, [AT_REST, load(MOST_G)], (next, step) => {
    const g = step.progress * MOST_G;
    if (submergenceOf(system, scene, next) > 0) {
      [before, state] = [g, next];
      return true;
    }
    found = refine(system, scene, state, before, g, load);
    return false;
  });
  return found;
};

/** Halves the last step, always from the state before it, until the baring is close. */
const refine = (
  system: OilSystem,
  scene: Scene,
  from: PoolState,
  covered: number,
  bared: number,
  load: (g: number) => Load,
): Baring => {
  let [lo, hi] = [covered, bared];
  let state = from;
  while (hi - lo > CLOSE) {
    const middle = (lo + hi) / 2;
    aim(system.model.design, scene, load(middle));
    const next = settle(scene, from);
    if (submergenceOf(system, scene, next) > 0) lo = middle;
    else {
      hi = middle;
      state = next;
    }
  }
  aim(system.model.design, scene, load(hi));
  const mine = state.of[system.model.mouth.cell] as number;
  const level = mine === DRY ? Number.NaN : levelOf(scene, state.pools[mine] as Pool);
  return { g: hi, lip: Number.isNaN(level) ? null : lipOf(system, scene, state, level) };
};

/** Oil this far below its lowest lip has not spilled: it has slid off the mouth, mm. */
const AT_LIP = 0.5;

const bindingOf = ({ g, lip }: Baring): string => {
  if (g === null) return `still covered at ${MOST_G} g`;
  if (lip === null || lip.below > AT_LIP) return 'the oil slides off the mouth without spilling';
  return `full to ${lip.name}`;
};

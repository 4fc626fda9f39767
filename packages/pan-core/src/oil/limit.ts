import type { Load } from '../design/index.js';
import { freeze } from '../numeric/index.js';
import { type OilSystem, restAnswer } from './answer.js';
import { createOriented } from './body.js';
import { type Lip, lipOf } from './lip.js';
import { submergenceOf } from './mouth-depth.js';
import { createScene, DRY, levelOf, type Pool, type PoolState, type Scene } from './pools.js';
import { aim, ramp } from './ramp.js';

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

/** The load in g at which the mouth first bares toward one direction, held and settled. */
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

/** A load along the ramp that the mouth is still covered at, the oil there, and a load at which it is bared. */
interface Bracket {
  readonly covered: number;
  readonly state: PoolState;
  readonly bared: number;
  readonly baredState: PoolState;
}

/**
 * The ramp to `MOST_G`, then over and over the step in which the mouth bared, as a ramp of its own: one long
 * step can part pools that a slow turn keeps together. Where the shorter steps keep the mouth covered to the
 * end of the long one, the ramp goes on from there.
 */
const firstBaring = (
  system: OilSystem,
  start: PoolState,
  toward: number,
  gating: 'held' | 'settled',
): Baring => {
  const { model, body, ways } = system;
  const scene = createScene(createOriented(body), ways[gating]);
  const load = (g: number): Load => loadToward(toward, g);
  let found = baredStep(system, scene, start, 0, MOST_G, load);
  while (found !== null && found.bared - found.covered > CLOSE) {
    const { state, covered, bared }: Bracket = found;
    found = baredStep(system, scene, state, covered, bared, load);
    if (found !== null) continue;
    const after = ramp(model.design, scene, state, [load(covered), load(bared)]);
    found = baredStep(system, scene, after, bared, MOST_G, load);
  }
  if (found === null) return { g: null, lip: null };
  const { bared, baredState } = found;
  aim(model.design, scene, load(bared));
  const mine = baredState.of[model.mouth.cell] as number;
  const level = mine === DRY ? Number.NaN : levelOf(scene, baredState.pools[mine] as Pool);
  return { g: bared, lip: Number.isNaN(level) ? null : lipOf(system, scene, baredState, level) };
};

/** The first step of a ramp from one load to another at whose end the mouth is bared; null when none is. */
const baredStep = (
  system: OilSystem,
  scene: Scene,
  start: PoolState,
  from: number,
  to: number,
  load: (g: number) => Load,
): Bracket | null => {
  let [covered, state] = [from, start];
  let found: Bracket | null = null;
  ramp(system.model.design, scene, start, [load(from), load(to)], (next, step) => {
    const g = from + step.progress * (to - from);
    if (submergenceOf(system, scene, next) > 0) {
      [covered, state] = [g, next];
      return true;
    }
    found = { covered, state, bared: g, baredState: next };
    return false;
  });
  return found;
};

/** Oil this far below its lowest lip has not spilled: it has slid off the mouth, mm. */
const AT_LIP = 0.5;

const bindingOf = ({ g, lip }: Baring): string =>
  g === null ? `still covered at ${MOST_G} g` : bindingWords(lip);

/** What holds a pool that has just bared the mouth, in words. */
export const bindingWords = (lip: Lip | null): string =>
  lip === null || lip.below > AT_LIP
    ? 'the oil slides off the mouth without spilling'
    : `full to ${lip.name}`;

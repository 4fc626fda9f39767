import type { Load } from '../design/index.js';
import { freeze } from '../numeric/index.js';
import { type OilSystem, restAnswer } from './answer.js';
import { createOriented } from './body.js';
import { type Lip, lipOf } from './lip.js';
import { submergenceOf } from './mouth-depth.js';
import { createScene, DRY, levelOf, type Pool, type PoolState, type Scene } from './pools.js';
import { aim, type RampStep, ramp } from './ramp.js';

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
export const CLOSE_G = 1e-6;
const ASIDE = 0.4 * CLOSE_G;

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

/** A load along the ramp that the mouth is still covered at, and the oil there. */
interface Covered {
  readonly g: number;
  readonly state: PoolState;
  /** Depth of the rim under the oil, mm. */
  readonly depth: number;
}

/** How far a ramp went covered, and the end of the step in which the mouth bared; null when it did not. */
interface Reach {
  readonly last: Covered;
  readonly bared: Covered | null;
}

/**
 * The ramp to `MOST_G`, then the step in which the mouth bared searched by loads in between, each a ramp from
 * the last load that still covered it: one long step can part pools that a slow turn keeps together. Where the
 * shorter steps keep the mouth covered to the end of the long one, the ramp goes on from there.
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
  const reach = (from: Covered, to: number, legs?: number): Reach =>
    reachOf(system, scene, from, to, load, legs);
  let found = reach({ g: 0, state: start, depth: Number.POSITIVE_INFINITY }, MOST_G);
  for (;;) {
    if (found.bared === null) return { g: null, lip: null };
    const [last, bared] = narrow(found.last, found.bared, reach);
    found = reach(last, bared.g, 1);
    if (found.bared !== null) break;
    found = reach(found.last, MOST_G);
  }
  const { g, state } = found.bared;
  aim(model.design, scene, load(g));
  const mine = state.of[model.mouth.cell] as number;
  const level = mine === DRY ? Number.NaN : levelOf(scene, state.pools[mine] as Pool);
  return { g, lip: Number.isNaN(level) ? null : lipOf(system, scene, state, level) };
};

/**
 * The greatest load within `CLOSE_G` of baring that still covers the mouth, and that baring: by false position on
 * the depth, where an end that stays twice counts half (Dowell and Jarratt 1971), aimed a little past the side
 * last met so that both ends close in. Where three tries do not halve the step, e.g. since the depth jumps, the
 * next one does.
 */
const narrow = (
  from: Covered,
  to: Covered,
  reach: (from: Covered, to: number, legs: number) => Reach,
): readonly [Covered, Covered] => {
  let [last, bared] = [from, to];
  let [over, under] = [last.depth, bared.depth];
  let side = 0;
  let [wide, tries] = [Number.POSITIVE_INFINITY, 0];
  while (bared.g - last.g > CLOSE_G) {
    const width = bared.g - last.g;
    const halve = !Number.isFinite(over) || (tries === 3 && width > wide / 2);
    if (tries === 3 || wide === Number.POSITIVE_INFINITY) [wide, tries] = [width, 0];
    tries++;
    const step = halve ? width / 2 : (over / (over - under)) * width + side * ASIDE;
    const found = reach(last, last.g + Math.min(Math.max(step, ASIDE), width - ASIDE), 1);
    const met = found.bared === null ? 1 : found.last === last ? -1 : 0;
    if (met >= 0) {
      last = found.last;
      over = last.depth;
    } else if (side === -1) over /= 2;
    if (found.bared !== null) {
      bared = found.bared;
      under = bared.depth;
    } else if (side === 1) under /= 2;
    side = met;
  }
  return [last, bared];
};

/** A ramp from a load that covers the mouth to another, as far as it stays covered. */
const reachOf = (
  system: OilSystem,
  scene: Scene,
  from: Covered,
  to: number,
  load: (g: number) => Load,
  legs?: number,
): Reach => {
  let last = from;
  let bared: Covered | null = null;
  const visit = (state: PoolState, { progress }: RampStep): boolean => {
    const g = from.g + progress * (to - from.g);
    const one = { g, state, depth: submergenceOf(system, scene, state) };
    if (one.depth > 0) last = one;
    else bared = one;
    return one.depth > 0;
  };
  ramp(system.model.design, scene, from.state, [load(from.g), load(to)], visit, legs);
  return { last, bared };
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

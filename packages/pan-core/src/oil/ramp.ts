import type { Design, Load } from '../design/index.js';
import { attitudeOf, between } from './attitude.js';
import { type Oriented, orient } from './body.js';
import { DRY, NO_OIL, type Pool, type PoolState, type Scene } from './pools.js';
import { settle } from './settle.js';
import { sillsOf } from './ways.js';

/** Legs a ramp is first cut into unless told, and how often a leg may be halved while its ends disagree. */
const LEGS = 12;
const MOST_HALVINGS = 10;
/** Pool volumes that differ by less than this between one step and two agree, mm³ (1e-5 L). */
const AGREE = 10;
/** A pool may part this far from where a slow turn would have parted it, mm. */
const TORN = 0.05;

export interface RampStep {
  /** 0 at the start of the ramp, 1 at its end. */
  readonly progress: number;
  readonly load: Load;
}

/**
 * Turns gravity infinitely slowly along the loads and lets the oil follow; the path matters, since a pool
 * that has spilled does not come back. A step is halved until one step and two agree.
 *
 * @param visit called at every accepted step with the state there; return false to stop early.
 */
export const ramp = (
  design: Design,
  scene: Scene,
  start: PoolState,
  loads: readonly Load[],
  visit?: (state: PoolState, step: RampStep) => boolean,
  legs = LEGS,
): PoolState => {
  let state = start;
  for (let leg = 0; leg + 1 < loads.length; leg++) {
    const from = loads[leg] as Load;
    const to = loads[leg + 1] as Load;
    const at = (t: number): Load => between(from, to, t);
    const go = (s: PoolState, t: number): PoolState => {
      aim(design, scene, at(t));
      return settle(scene, s);
    };
    // `whole` is the state after going from t0 to t1 in one step, where it is known already.
    const advance = (
      s: PoolState,
      t0: number,
      t1: number,
      whole: PoolState | null,
      halvings: number,
    ): PoolState | null => {
      const middle = (t0 + t1) / 2;
      const half = go(s, middle);
      const two = go(half, t1);
      // Where a pool parts in the second half, one step and two part it by the same plane and agree on it.
      const torn = Math.max(half.torn ?? 0, two.torn ?? 0) > TORN;
      const calm = () => isCalm(s, half) && isCalm(half, two);
      if (halvings > 0 && (torn || (!calm() && apart(whole ?? go(s, t1), two) > AGREE))) {
        const first = advance(s, t0, middle, half, halvings - 1);
        return first === null ? null : advance(first, middle, t1, null, halvings - 1);
      }
      const progress = (leg + t1) / (loads.length - 1);
      // The scene is still turned to t1.
      if (visit === undefined) return two;
      return visit(two, { progress, load: at(t1) }) ? two : null;
    };
    // Doors and weeps that were open at rest shut before anything turns: the pools part where they lie.
    if (leg === 0) state = go(state, 0);
    for (let k = 0; k < legs; k++) {
      const next = advance(state, k / legs, (k + 1) / legs, null, MOST_HALVINGS);
      if (next === null) return state;
      state = next;
    }
  }
  aim(design, scene, loads[loads.length - 1] as Load);
  return state;
};

/** Turns a scene to a load's effective gravity. */
export const aim = (design: Design, scene: Scene, load: Load): Oriented => {
  orient(scene.oriented, attitudeOf(design, load).up);
  sillsOf(scene.ways, scene.oriented, scene.sills);
  return scene.oriented;
};

/** The largest difference in the volumes of the pools that a cell belongs to, mm³; dry cells do not count. */
const apart = (a: PoolState, b: PoolState): number => {
  let most = 0;
  for (let c = 0; c < a.of.length; c++) {
    const [i, j] = [a.of[c] as number, b.of[c] as number];
    if (i === DRY || j === DRY) continue;
    most = Math.max(most, Math.abs((a.pools[i] as Pool).volume - (b.pools[j] as Pool).volume));
  }
  return most;
};

/** Whether no pool gained, lost or parted: what has spilled never comes back, so nothing happened in between either. */
const isCalm = (a: PoolState, b: PoolState): boolean => live(a) === live(b) && apart(a, b) <= NO_OIL;

const live = (s: PoolState): number =>
  s.pools.reduce((n, p) => (p !== null && p.volume > NO_OIL ? n + 1 : n), 0);

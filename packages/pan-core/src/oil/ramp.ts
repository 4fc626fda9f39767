import type { Design, Load } from '../design/index.js';
import { attitudeOf, between } from './attitude.js';
import { type Oriented, orient } from './body.js';
import { DRY, type Pool, type PoolState, type Scene } from './pools.js';
import { settle } from './settle.js';
import { sillsOf } from './ways.js';

/** Legs a ramp is first cut into, and how often a leg may be halved while its ends disagree. */
const LEGS = 12;
const MOST_HALVINGS = 10;
/** Cell volumes that differ by less than this between one step and two agree, mm³ (1e-6 L). */
const AGREE = 1;

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
    const advance = (
      s: PoolState,
      t0: number,
      t1: number,
      whole: PoolState,
      halvings: number,
    ): PoolState | null => {
      const middle = (t0 + t1) / 2;
      const half = go(s, middle);
      const two = go(half, t1);
      if (halvings > 0 && apart(whole, two) > AGREE) {
        const first = advance(s, t0, middle, half, halvings - 1);
        if (first === null) return null;
        return advance(first, middle, t1, go(first, t1), halvings - 1);
      }
      const progress = (leg + t1) / (loads.length - 1);
      return visit === undefined || visit(two, { progress, load: at(t1) }) ? two : null;
    };
    for (let k = 0; k < LEGS; k++) {
      const [t0, t1] = [k / LEGS, (k + 1) / LEGS];
      const next = advance(state, t0, t1, go(state, t1), MOST_HALVINGS);
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

import { freeze } from '../numeric/index.js';
import type { OilAnswer, OilSystem } from './answer.js';
import { attitudeOf } from './attitude.js';
import { createOriented, heightOf, orient } from './body.js';
import { GRAVITY } from './critical.js';
import { type FreeSurface, freeSurface } from './free-surface.js';
import { createMeasure } from './level.js';
import { practice } from './surge/practice.js';

/**
 * Natural frequency of oil in a rigid rectangular tank, Hz: f_n = (1/2π)√(g(nπ/L)·tanh(nπh/L)).
 * NASA SP-106 and SP-8009 (titles seen, equation from memory). Small waves, no viscosity, walls upright.
 *
 * @param length of the surface along the motion, mm; @param depth mm; @param gravity mm/s²
 */
export const sloshFrequency = (length: number, depth: number, gravity: number, mode = 1): number => {
  const k = (mode * Math.PI) / length;
  return Math.sqrt(gravity * k * Math.tanh(k * depth)) / (2 * Math.PI);
};

/** Share of critical damping of a bare surface (common practice, no source). */
export const SLOSH_DAMPING = practice('damping');

/** How far a damped oscillation goes after a step, as a multiple of the step: 1 + exp(−πζ/√(1−ζ²)), 0 ≤ ζ < 1. */
export const stepOvershoot = (damping: number): number =>
  1 + Math.exp((-Math.PI * damping) / Math.sqrt(1 - damping * damping));

/** First-mode period of a pool along and across the car, s; null where it has no free surface. */
export interface PoolSlosh {
  /** mm³ */
  readonly volume: number;
  readonly hasPickup: boolean;
  readonly fore: number | null;
  readonly side: number | null;
}

/**
 * First-mode periods of every pool of an answer, each taken as a rectangular tank as long and wide as its free
 * surface reaches and as deep as volume over surface. Baffles inside a pool, its sloping floor and waves that
 * break are not modelled.
 */
export const sloshOf = (system: OilSystem, answer: OilAnswer): readonly PoolSlosh[] => {
  const o = orient(createOriented(system.body), answer.up);
  const { pull } = attitudeOf(system.model.design, answer.load);
  const gravity = GRAVITY * Math.hypot(...pull);
  const shift = heightOf(o, [0, 0, 0]);
  const surface: FreeSurface = { x: 0, y: 0, depth: 0 };
  const measure = createMeasure();
  return freeze(
    answer.pools.map(({ volume, hasPickup, cells, level }): PoolSlosh => {
      freeSurface(o, cells, level + shift, measure, surface);
      const period = (length: number): number | null =>
        length > 0 && surface.depth > 0 ? 1 / sloshFrequency(length, surface.depth, gravity) : null;
      return { volume, hasPickup, fore: period(surface.x), side: period(surface.y) };
    }),
  );
};

import type { Oriented } from './body.js';

/**
 * A level, the volume under it and its first three derivatives: mm, mm³, mm², mm, 1. Made once and handed from
 * solve to solve: numbers stay in its fields, since one that is passed to a long function or returned from it
 * is allocated each time.
 */
export interface Measure {
  level: number;
  volume: number;
  area: number;
  slope: number;
  curve: number;
  /** While a level is sought: the volume still missed, then the step that makes up for it. */
  step: number;
}

/** From a fraction on, the fields hold fractions in place. */
const BLANK = 0.5;

/** A place for volume, free surface and their slopes under a level. */
export const createMeasure = (): Measure => ({
  level: BLANK,
  volume: BLANK,
  area: BLANK,
  slope: BLANK,
  curve: BLANK,
  step: BLANK,
});

/**
 * Oil in the given cells below height h, with exact derivatives, into `out`.
 *
 * Divergence theorem: each boundary triangle adds the signed column between itself and the plane, so the
 * free surface needs no cap. A triangle with heights z₁ ≤ z₂ ≤ z₃ and projected area w adds
 * w(h−z₁)³ / 3(z₂−z₁)(z₃−z₁) below z₂ and w[(h−z̄) + (z₃−h)³ / 3(z₃−z₁)(z₃−z₂)] above; derived here.
 * Heights are along the oriented body's up from its own origin.
 */
export const measureCells = (o: Oriented, cells: ArrayLike<number>, h: number, out: Measure): Measure => {
  out.level = h;
  measureAt(o, cells, out);
  return out;
};

/** The same at `out.level`. */
const measureAt = (o: Oriented, cells: ArrayLike<number>, out: Measure): void => {
  const h = out.level;
  const { heights, weights, low, high, body } = o;
  const { triangles, firstTriangle, capacity } = body;
  let v = 0;
  let a = 0;
  let s = 0;
  let c = 0;
  for (let k = 0; k < cells.length; k++) {
    const cell = cells[k] as number;
    if (h <= (low[cell] as number)) continue;
    if (h >= (high[cell] as number)) {
      v += capacity[cell] as number;
      continue;
    }
    const end = firstTriangle[cell + 1] as number;
    for (let t = firstTriangle[cell] as number, j = 3 * t; t < end; t++, j += 3) {
      const w = weights[t] as number;
      if (w === 0) continue;
      let z1 = heights[triangles[j] as number] as number;
      let z2 = heights[triangles[j + 1] as number] as number;
      let z3 = heights[triangles[j + 2] as number] as number;
      // Swaps by hand: pairs in brackets take this loop twice the time.
      let z = z1;
      if (z1 > z2) {
        z1 = z2;
        z2 = z;
      }
      if (z2 > z3) {
        z = z3;
        z3 = z2;
        z2 = z;
        if (z1 > z) {
          z2 = z1;
          z1 = z;
        }
      }
      if (h <= z1) continue;
      if (h >= z3) {
        v += (w * (h - z1 + (h - z2) + (h - z3))) / 3;
        a += w;
      } else if (h <= z2) {
        const d = h - z1;
        const q = w / ((z2 - z1) * (z3 - z1));
        const qd = q * d;
        v += (qd * d * d) / 3;
        a += qd * d;
        s += 2 * qd;
        c += 2 * q;
      } else {
        const d = z3 - h;
        const q = w / ((z3 - z1) * (z3 - z2));
        const qd = q * d;
        v += (w * (h - z1 + (h - z2) - d) + qd * d * d) / 3;
        a += w - qd * d;
        s += 2 * qd;
        c -= 2 * q;
      }
    }
  }
  out.volume = v;
  out.area = a;
  out.slope = s;
  out.curve = c;
};

export const MOST_STEPS = 80;
/** A volume this near, as a share of the whole, differs by the sum's own rounding: one linear step ends it. */
export const ROUNDING = 4e-15;

/**
 * Height at which the given cells hold `volume`. Empty cells answer their lowest point, full ones their
 * highest. Each step solves the local cubic exactly, so the level lands once no corner lies between; a
 * bracket keeps it safe.
 *
 * @param guess a height to start from, e.g. the last answer of a sweep; NaN for none.
 */
export const solveLevel = (
  o: Oriented,
  cells: ArrayLike<number>,
  volume: number,
  out: Measure,
  guess = Number.NaN,
): number => {
  out.level = guess;
  out.volume = volume;
  solveAt(o, cells, out);
  return out.level;
};

/** Moves `out.level`, a guess, to the level of `out.volume`; allocates nothing. */
export const solveAt = (o: Oriented, cells: ArrayLike<number>, out: Measure): void => {
  const { low, high, body } = o;
  const { capacity } = body;
  const { volume, level: guess } = out;
  let lo = Number.POSITIVE_INFINITY;
  let hi = Number.NEGATIVE_INFINITY;
  let whole = 0;
  for (let k = 0; k < cells.length; k++) {
    const cell = cells[k] as number;
    const bottom = low[cell] as number;
    const top = high[cell] as number;
    if (bottom < lo) lo = bottom;
    if (top > hi) hi = top;
    whole += capacity[cell] as number;
  }
  if (volume <= 0 || volume >= whole) {
    out.level = volume <= 0 ? lo : hi;
    return;
  }
  let h = guess > lo && guess < hi ? guess : lo + (hi - lo) * (volume / whole);
  for (let i = 0; i < MOST_STEPS; i++) {
    out.level = h;
    measureAt(o, cells, out);
    const miss = volume - out.volume;
    if (Math.abs(miss) <= ROUNDING * whole) {
      const polished = h + miss / out.area;
      if (polished > lo && polished < hi) out.level = polished;
      return;
    }
    if (miss > 0) lo = h;
    else hi = h;
    out.step = miss;
    cubicStep(out);
    let { step } = out;
    if (!(h + step > lo && h + step < hi)) step = (lo + hi) / 2 - h;
    const next = h + step;
    if (next === h || Math.abs(step) <= 1e-15 * (Math.abs(h) + 1)) return;
    h = next;
  }
  out.level = h;
};

/** Turns `step` from a missing volume into δ with A·δ + A′δ²/2 + A″δ³/6 = miss, by Newton from the linear step; NaN where none is found. */
export const cubicStep = (m: Measure): void => {
  const { area, slope, curve, step: miss } = m;
  let d = area > 0 ? miss / area : Number.NaN;
  for (let i = 0; i < 8; i++) {
    const f = d * (area + d * (slope / 2 + (d * curve) / 6)) - miss;
    const df = area + d * (slope + (d * curve) / 2);
    if (!(df > 0)) {
      m.step = Number.NaN;
      return;
    }
    const next = d - f / df;
    if (next === d) break;
    d = next;
  }
  m.step = d;
};

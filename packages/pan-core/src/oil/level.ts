import type { Oriented } from './body.js';

/** Volume under a level and its first three derivatives: mm³, mm², mm, 1. */
export interface Measure {
  volume: number;
  area: number;
  slope: number;
  curve: number;
}

export const createMeasure = (): Measure => ({ volume: 0, area: 0, slope: 0, curve: 0 });

/**
 * Oil in the given cells below height h, with exact derivatives, into `out`.
 *
 * Divergence theorem: each boundary triangle adds the signed column between itself and the plane, so the
 * free surface needs no cap. A triangle with heights z₁ ≤ z₂ ≤ z₃ and projected area w adds
 * w(h−z₁)³ / 3(z₂−z₁)(z₃−z₁) below z₂ and w[(h−z̄) + (z₃−h)³ / 3(z₃−z₁)(z₃−z₂)] above; derived here.
 * Heights are along the oriented body's up from its own origin.
 */
export const measureCells = (o: Oriented, cells: ArrayLike<number>, h: number, out: Measure): Measure => {
  const { heights, weights, low, high, body } = o;
  const { triangles, firstTriangle, capacity } = body;
  let [v, a, s, c] = [0, 0, 0, 0];
  for (let k = 0; k < cells.length; k++) {
    const cell = cells[k] as number;
    if (h <= (low[cell] as number)) continue;
    if (h >= (high[cell] as number)) {
      v += capacity[cell] as number;
      continue;
    }
    const end = firstTriangle[cell + 1] as number;
    for (let t = firstTriangle[cell] as number; t < end; t++) {
      const w = weights[t] as number;
      if (w === 0) continue;
      let z1 = heights[triangles[3 * t] as number] as number;
      let z2 = heights[triangles[3 * t + 1] as number] as number;
      let z3 = heights[triangles[3 * t + 2] as number] as number;
      if (z1 > z2) [z1, z2] = [z2, z1];
      if (z2 > z3) [z2, z3] = [z3, z2];
      if (z1 > z2) [z1, z2] = [z2, z1];
      if (h <= z1) continue;
      if (h >= z3) {
        v += (w * (h - z1 + (h - z2) + (h - z3))) / 3;
        a += w;
      } else if (h <= z2) {
        const d = h - z1;
        const q = w / ((z2 - z1) * (z3 - z1));
        v += (q * d * d * d) / 3;
        a += q * d * d;
        s += 2 * q * d;
        c += 2 * q;
      } else {
        const d = z3 - h;
        const q = w / ((z3 - z1) * (z3 - z2));
        v += (w * (h - z1 + (h - z2) - d) + q * d * d * d) / 3;
        a += w - q * d * d;
        s += 2 * q * d;
        c -= 2 * q;
      }
    }
  }
  out.volume = v;
  out.area = a;
  out.slope = s;
  out.curve = c;
  return out;
};

const MOST_STEPS = 80;
/** A volume this near, as a share of the whole, differs by the sum's own rounding: one linear step ends it. */
const ROUNDING = 4e-15;

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
  let [lo, hi, whole] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, 0];
  for (let k = 0; k < cells.length; k++) {
    const cell = cells[k] as number;
    lo = Math.min(lo, o.low[cell] as number);
    hi = Math.max(hi, o.high[cell] as number);
    whole += o.body.capacity[cell] as number;
  }
  if (volume <= 0) return lo;
  if (volume >= whole) return hi;
  let h = guess > lo && guess < hi ? guess : lo + (hi - lo) * (volume / whole);
  for (let i = 0; i < MOST_STEPS; i++) {
    measureCells(o, cells, h, out);
    const miss = volume - out.volume;
    if (Math.abs(miss) <= ROUNDING * whole) {
      const polished = h + miss / out.area;
      return polished > lo && polished < hi ? polished : h;
    }
    if (miss > 0) lo = h;
    else hi = h;
    let step = out.area > 0 ? cubicStep(miss, out) : Number.NaN;
    if (!(h + step > lo && h + step < hi)) step = (lo + hi) / 2 - h;
    const next = h + step;
    if (next === h || Math.abs(step) <= 1e-15 * (Math.abs(h) + 1)) return h;
    h = next;
  }
  return h;
};

/** δ with A·δ + A′δ²/2 + A″δ³/6 = miss, by Newton from the linear step. */
const cubicStep = (miss: number, m: Measure): number => {
  let d = miss / m.area;
  for (let i = 0; i < 8; i++) {
    const f = d * (m.area + d * (m.slope / 2 + (d * m.curve) / 6)) - miss;
    const df = m.area + d * (m.slope + (d * m.curve) / 2);
    if (!(df > 0)) return Number.NaN;
    const next = d - f / df;
    if (next === d) break;
    d = next;
  }
  return d;
};

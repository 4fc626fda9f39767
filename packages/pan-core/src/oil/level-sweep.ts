import type { Oriented } from './body.js';
import { createMeasure, cubicStep, MOST_STEPS, ROUNDING } from './level.js';
import { createFront, leaveBelow, measureFront, withinReach } from './level-front.js';

/**
 * Levels of many volumes along one direction, for less than half of what each costs alone. The triangles are
 * gathered once; those that the level cuts rise with it, and the local cubic leads from each level to the
 * next. Where no corner lies between the height measured and the cubic's answer that answer is exact, so one
 * measure in most cases does for two. Every level is measured directly: sums carried from corner to corner
 * lose their digits on floors that are nearly level.
 *
 * @param volumes rising, mm³; `out` takes their levels, mm: the lowest point for none, the highest for all
 */
export const sweepLevels = (
  o: Oriented,
  cells: ArrayLike<number>,
  volumes: ArrayLike<number>,
  out: Float64Array,
): Float64Array => {
  let bottom = Number.POSITIVE_INFINITY;
  let top = Number.NEGATIVE_INFINITY;
  let whole = 0;
  for (let k = 0; k < cells.length; k++) {
    const cell = cells[k] as number;
    bottom = Math.min(bottom, o.low[cell] as number);
    top = Math.max(top, o.high[cell] as number);
    whole += o.body.capacity[cell] as number;
  }
  const front = createFront(o, cells, bottom, top);
  const m = createMeasure();
  m.level = bottom;
  m.volume = 0;
  m.area = 0;
  let last = bottom;
  for (let i = 0; i < volumes.length; i++) {
    const volume = volumes[i] as number;
    if (volume > 0 && volume < whole) {
      let lo = last;
      let hi = top;
      for (let k = 0; k < MOST_STEPS; k++) {
        const h = m.level;
        const miss = volume - m.volume;
        if (Math.abs(miss) <= ROUNDING * whole) {
          last = h;
          break;
        }
        if (miss > 0) lo = Math.max(lo, h);
        else hi = Math.min(hi, h);
        m.step = miss;
        cubicStep(m);
        const next = h + m.step;
        const inside = next >= lo && next <= hi;
        if (inside && withinReach(front, next)) {
          last = next;
          break;
        }
        last = m.level = inside ? next : (lo + hi) / 2;
        if (m.level === h) break;
        measureFront(front, m);
      }
      // Those left behind cost little to measure: they are let go a few levels at a time.
      if (i % 4 === 3) leaveBelow(front, last);
    }
    out[i] = volume <= 0 ? bottom : volume >= whole ? top : last;
  }
  return out;
};

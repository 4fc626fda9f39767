import type { Vec2 } from '../numeric/index.js';
import { offChord2 } from './path-vector.js';

/**
 * A closed polygon with the corners left out that lie within `tolerance` of the edge across them.
 * D. H. Douglas and T. K. Peucker, Cartographica 10 (1973) 112–122 (from memory).
 */
export const simplifyLoop = (loop: readonly Vec2[], tolerance: number): readonly Vec2[] => {
  const n = loop.length;
  if (n < 4) return loop;
  // Begin at the two corners farthest along x, which any outline keeps.
  const xs = loop.map(([x]) => x);
  const first = xs.indexOf(Math.min(...xs));
  const ring = [...loop.slice(first), ...loop.slice(0, first), loop[first] as Vec2];
  const far = ring.reduce((best, [x], i) => (x > (ring[best] as Vec2)[0] ? i : best), 0);
  const kept = new Set([0, far]);
  const work: (readonly [number, number])[] = [
    [0, far],
    [far, n],
  ];
  for (let span = work.pop(); span !== undefined; span = work.pop()) {
    const [from, to] = span;
    let [worst, at] = [tolerance, -1];
    for (let i = from + 1; i < to; i++) {
      const off = offChord2(ring[i] as Vec2, ring[from] as Vec2, ring[to] as Vec2);
      if (off > worst) [worst, at] = [off, i];
    }
    if (at < 0) continue;
    kept.add(at);
    work.push([from, at], [at, to]);
  }
  return [...kept].sort((a, b) => a - b).map((i) => ring[i] as Vec2);
};

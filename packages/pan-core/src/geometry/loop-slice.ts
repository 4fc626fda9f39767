import { dot3, type Vec2, type Vec3 } from '../numeric/index.js';
import { type CuttingPlane, flatOn, outOfPlane } from './cutting-plane.js';

/** A straight piece in a cutting plane's own axes, mm. */
export type FlatSegment = readonly [Vec2, Vec2];

/**
 * Where a plane cuts a flat piece with holes, given by its loops in any sense: the stretches inside an odd number
 * of loops. A piece that lies in the plane itself gives nothing.
 */
export const sliceLoops = (
  loops: readonly (readonly Vec3[])[],
  plane: CuttingPlane,
): readonly FlatSegment[] => {
  const normal = outOfPlane(plane);
  const offset = dot3(normal, plane.at);
  const crossings: Vec2[] = [];
  for (const loop of loops) {
    for (let i = 0; i < loop.length; i++) {
      const [p, q] = [loop[i] as Vec3, loop[(i + 1) % loop.length] as Vec3];
      const [dp, dq] = [dot3(normal, p) - offset, dot3(normal, q) - offset];
      // A corner on the plane belongs to the side above it, so that each passage counts once.
      if (dp < 0 === dq < 0) continue;
      const t = dp / (dp - dq);
      const mix = (k: 0 | 1 | 2): number => p[k] + t * (q[k] - p[k]);
      crossings.push(flatOn(plane, [mix(0), mix(1), mix(2)]));
    }
  }
  const sorted = alongLine(crossings);
  const segments: FlatSegment[] = [];
  for (let i = 0; i + 1 < sorted.length; i += 2) segments.push([sorted[i] as Vec2, sorted[i + 1] as Vec2]);
  return segments;
};

/** Points of one straight line in its order. */
const alongLine = (points: readonly Vec2[]): readonly Vec2[] => {
  const wide = (k: 0 | 1): number =>
    Math.max(...points.map((p) => p[k])) - Math.min(...points.map((p) => p[k]));
  const axis = wide(0) >= wide(1) ? 0 : 1;
  return [...points].sort((a, b) => a[axis] - b[axis]);
};

import { add3, dot3, scale3, subtract3, type Vec2, type Vec3 } from '../numeric/index.js';
import type { Plate } from '../pan/index.js';
import { distanceToSweep, edgeToSweep, type Nearest, nearestOf, type Sweep } from './sweep.js';

/** A baffle against one sweep: both its faces, edges and, where the sweep hangs over it, the face itself. */
export const plateToSweep = (plate: Plate, sweep: Sweep): Nearest =>
  nearestOf(
    [0, plate.baffle.thickness].flatMap((up) =>
      plate.outlines.flatMap((outline) => faceToSweep(plate, outline, up, sweep)),
    ),
  );

const faceToSweep = (
  plate: Plate,
  outline: readonly Vec2[],
  up: number,
  sweep: Sweep,
): readonly Nearest[] => {
  const origin = add3(plate.origin, scale3(plate.normal, up));
  const lift = ([s, t]: Vec2): Vec3 => add3(origin, add3(scale3(plate.u, s), scale3(plate.v, t)));
  const corners = outline.map(lift);
  const edges = corners.map((a, i) => edgeToSweep(sweep, a, corners[(i + 1) % corners.length]!));
  // Over the whole plane the nearest points lie on the foot of the sweep's lowest line, or of its axis.
  const feet = [sweep.x0, (sweep.x0 + sweep.x1) / 2, sweep.x1].flatMap((x) =>
    [sweep.height, sweep.height - sweep.radius].map((z): Vec3 => [x, 0, z]),
  );
  const inside = feet.flatMap((p) => {
    const rise = dot3(plate.normal, subtract3(p, origin));
    const foot = add3(p, scale3(plate.normal, -rise));
    const flat: Vec2 = [dot3(plate.u, subtract3(foot, origin)), dot3(plate.v, subtract3(foot, origin))];
    return holdsPoint(outline, flat) ? [{ distance: distanceToSweep(sweep, foot), at: foot }] : [];
  });
  return [...edges, ...inside];
};

/** Even-odd rule. */
const holdsPoint = (outline: readonly Vec2[], p: Vec2): boolean => {
  let inside = false;
  outline.forEach((a, i) => {
    const b = outline[(i + 1) % outline.length]!;
    if (a[1] > p[1] !== b[1] > p[1] && p[0] < a[0] + ((b[0] - a[0]) * (p[1] - a[1])) / (b[1] - a[1])) {
      inside = !inside;
    }
  });
  return inside;
};

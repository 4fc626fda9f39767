import { framePoint, holdsPoint } from '../geometry/index.js';
import { add3, cross3, dot3, scale3, subtract3, unit3, type Vec2, type Vec3 } from '../numeric/index.js';
import type { Plate } from '../pan/index.js';
import type { BodySolid } from './body.js';
import { distanceToSweep, edgeToSweep, type Nearest, nearestOf, type Sweep } from './sweep.js';

/** A baffle against one sweep: both its faces, edges and, where the sweep hangs over it, the face itself. */
export const plateToSweep = (plate: Plate, sweep: Sweep): Nearest =>
  nearestOf(
    [0, plate.baffle.thickness].flatMap((up) => {
      const origin = add3(plate.origin, scale3(plate.normal, up));
      return plate.outlines.flatMap((outline) => faceToSweep({ ...plate, origin }, outline, sweep));
    }),
  );

/** Solids with flat faces against one sweep. */
export const solidsToSweep = (solids: readonly BodySolid[], sweep: Sweep): Nearest =>
  nearestOf(
    solids.flatMap(({ vertices, faces }) =>
      faces.flatMap((loop) => {
        const corners = loop.map((i) => vertices[i]!);
        const [origin, next] = [corners[0]!, corners[1]!];
        const u = unit3(subtract3(next, origin));
        const normal = unit3(cross3(u, subtract3(corners[2]!, next)));
        const v = cross3(normal, u);
        const outline = corners.map((p): Vec2 => {
          const r = subtract3(p, origin);
          return [dot3(u, r), dot3(v, r)];
        });
        return faceToSweep({ origin, u, v, normal }, outline, sweep);
      }),
    ),
  );

type Frame = Pick<Plate, 'origin' | 'u' | 'v' | 'normal'>;

const faceToSweep = (frame: Frame, outline: readonly Vec2[], sweep: Sweep): readonly Nearest[] => {
  const { origin, u, v, normal } = frame;
  const corners = outline.map((p) => framePoint(frame, p));
  const edges = corners.map((a, i) => edgeToSweep(sweep, a, corners[(i + 1) % corners.length]!));
  // Over the whole plane the nearest points lie on the foot of the sweep's lowest line, or of its axis.
  const feet = [sweep.x0, (sweep.x0 + sweep.x1) / 2, sweep.x1].flatMap((x) =>
    [sweep.height, sweep.height - sweep.radius].map((z): Vec3 => [x, 0, z]),
  );
  const inside = feet.flatMap((p) => {
    const foot = add3(p, scale3(normal, -dot3(normal, subtract3(p, origin))));
    const r = subtract3(foot, origin);
    const flat: Vec2 = [dot3(u, r), dot3(v, r)];
    return holdsPoint(outline, flat) ? [{ distance: distanceToSweep(sweep, foot), at: foot }] : [];
  });
  return [...edges, ...inside];
};

import type { Vec3 } from '../numeric/index.js';
import type { BodySolid } from './body.js';

/**
 * A prism on a flat base that runs counter-clockwise seen from the side the sweep goes to.
 *
 * @param others Name of every face but the base.
 */
export const prism = (name: string, base: readonly Vec3[], sweep: Vec3, others = name): BodySolid => {
  const n = base.length;
  const end = base.map((p): Vec3 => [p[0] + sweep[0], p[1] + sweep[1], p[2] + sweep[2]]);
  const round = base.map((_, i) => i);
  const faces = [
    [...round].reverse(),
    round.map((i) => i + n),
    ...round.map((i) => [i, (i + 1) % n, ((i + 1) % n) + n, i + n]),
  ];
  return {
    name,
    vertices: [...base, ...end],
    faces,
    faceNames: faces.map((_, i) => (i === 0 ? name : others)),
  };
};

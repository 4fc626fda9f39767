import type { Deepest } from '../geometry/index.js';
import { cross3, dot3, scale3, subtract3, type Vec3 } from '../numeric/index.js';
import type { Body } from './body.js';

const ON = 1e-4;

/** The name of the face that a deepest point is nearest to; null when the two only touch. */
export const surfaceName = (body: Body, deep: Deepest): string | null => {
  if (deep.facet === null) return null;
  const { normal, offset, from } = deep.facet;
  const rise = offset - dot3(normal, deep.at);
  const foot = subtract3(deep.at, scale3(normal, -rise));
  for (const solid of body.solids)
    for (const [i, face] of solid.faces.entries()) {
      const loop = face.map((k) => solid.vertices[k]!);
      if (holds(loop, normal, foot)) return solid.faceNames[i]!;
    }
  return body.solids[from.solid]!.faceNames[from.face]!;
};

/** Whether a face that looks along `normal` holds a point. */
const holds = (loop: readonly Vec3[], normal: Vec3, p: Vec3): boolean =>
  Math.abs(dot3(normal, subtract3(p, loop[0]!))) < ON &&
  loop.every((a, i) => {
    const edge = subtract3(loop[(i + 1) % loop.length]!, a);
    return (
      Math.abs(dot3(normal, edge)) <= ON &&
      dot3(cross3(normal, edge), subtract3(p, a)) >= -ON * Math.hypot(...edge)
    );
  });

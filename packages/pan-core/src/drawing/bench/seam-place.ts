import { distance2, insideRegion, nearestOnSegment, type Path } from '../../geometry/index.js';
import { add3, length3, scale3, subtract3, type Vec2, type Vec3 } from '../../numeric/index.js';
import { locate, type Part } from '../../sheet/index.js';
import type { Seam } from '../../weld/index.js';

/** An edge that stops short of its corner lies at most this far from the seam, in thicknesses and mm. */
const SHORT = { thicknesses: 2.5, more: 2 };

/** A place of a seam on a part as drawn, the middle of its longest stretch before others; null where none is. */
export const seamPlace = (part: Part, { lines }: Pick<Seam, 'lines'>): Vec2 | null => {
  const stretches = lines
    .flatMap(({ root }) => root.slice(1).map((b, i): readonly [Vec3, Vec3] => [root[i]!, b]))
    .sort((p, q) => length3(subtract3(q[1], q[0])) - length3(subtract3(p[1], p[0])));
  for (const share of [0.5, 0.25, 0.75])
    for (const [a, b] of stretches) {
      const p = add3(a, scale3(subtract3(b, a), share));
      const found = locate(part.faces ?? [], p, part.thickness + 1);
      const place = found === null ? null : onMetal(part, found.at);
      if (place !== null) return place;
    }
  return null;
};

/** On the nearest cut edge where one is near, else where it is if that is on the part. */
const onMetal = (part: Part, p: Vec2): Vec2 | null => {
  const loops = [part.outline, ...part.openings];
  const edge = nearest(loops.flat(), p);
  if (distance2(edge, p) <= SHORT.thicknesses * part.thickness + SHORT.more) return edge;
  return insideRegion({ loops }, p) ? p : null;
};

const nearest = (pieces: Path, p: Vec2): Vec2 =>
  pieces
    .map((piece) => nearestOnSegment(piece, p))
    .reduce((best, next) => (distance2(next, p) < distance2(best, p) ? next : best));

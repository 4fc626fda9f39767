import { dot3, type Vec3 } from '../numeric/index.js';
import {
  type Bounds,
  boundsGap,
  boundsOf,
  type ConvexSolid,
  type HalfSpace,
  halfSpacesOf,
  loopNormal,
} from './convex-solid.js';
import { type Facet, facetOf } from './facet.js';
import { mergedFacets } from './facet-merge.js';

/** Faces nearer than this to another solid count as touching it, mm; the boundary is true to about as much. */
const TOUCH = 1e-7;
/** Pieces smaller than this are dropped: half the area vector squared, mm⁴. */
const NO_AREA = 1e-10;

/**
 * The outer surface of a union of convex solids as flat convex facets: each face less what any other solid
 * covers. Where two solids share a face looking the same way, the first one keeps it.
 */
export const unionBoundary = (solids: readonly ConvexSolid[]): readonly Facet[] => {
  const spaces = solids.map(halfSpacesOf);
  const bounds = solids.map((s) => boundsOf(s.vertices));
  const facets = solids.flatMap((solid, s) =>
    solid.faces.flatMap((face, f) => {
      const whole = face.map((i) => solid.vertices[i]!);
      const own = spaces[s]![f]!;
      const box = boundsOf(whole);
      let pieces: readonly (readonly Vec3[])[] = [whole];
      for (let o = 0; o < solids.length && pieces.length > 0; o++) {
        if (o === s || boundsGap(box, bounds[o]!) > TOUCH) continue;
        if (o > s && sharesFace(own, spaces[o]!)) continue;
        pieces = pieces.flatMap((piece) => outsideOf(piece, spaces[o]!, bounds[o]!));
      }
      return pieces.map((loop) => facetOf(loop, { solid: s, face: f }));
    }),
  );
  return mergedFacets(facets, TOUCH);
};

const sharesFace = (own: HalfSpace, others: readonly HalfSpace[]): boolean =>
  others.some((h) => dot3(h.normal, own.normal) > 1 - 1e-12 && Math.abs(h.offset - own.offset) <= TOUCH);

const outsideOf = (
  loop: readonly Vec3[],
  spaces: readonly HalfSpace[],
  bounds: Bounds,
): readonly (readonly Vec3[])[] => {
  if (boundsGap(boundsOf(loop), bounds) > TOUCH) return [loop];
  const kept: (readonly Vec3[])[] = [];
  let rest = loop;
  for (const space of spaces) {
    const reach = space.offset + TOUCH;
    const outside = clipLoop(rest, space.normal, reach, 1);
    if (outside.length > 0) kept.push(outside);
    rest = clipLoop(rest, space.normal, reach, -1);
    if (rest.length === 0) return [loop];
  }
  return kept;
};

/** The part of a flat convex loop where side·(n·p − offset) ≥ 0; empty when next to nothing is left. */
const clipLoop = (loop: readonly Vec3[], normal: Vec3, offset: number, side: 1 | -1): readonly Vec3[] => {
  const heights = loop.map((p) => side * (dot3(normal, p) - offset));
  if (heights.every((h) => h >= 0)) return loop;
  if (heights.every((h) => h <= 0)) return [];
  const out: Vec3[] = [];
  loop.forEach((p, i) => {
    const q = loop[(i + 1) % loop.length]!;
    const [hp, hq] = [heights[i]!, heights[(i + 1) % loop.length]!];
    if (hp >= 0) out.push(p);
    if ((hp > 0 && hq < 0) || (hp < 0 && hq > 0)) {
      const t = hp / (hp - hq);
      out.push([p[0] + t * (q[0] - p[0]), p[1] + t * (q[1] - p[1]), p[2] + t * (q[2] - p[2])]);
    }
  });
  const area = out.length < 3 ? [0, 0, 0] : loopNormal(out);
  return area[0]! ** 2 + area[1]! ** 2 + area[2]! ** 2 < NO_AREA ? [] : out;
};

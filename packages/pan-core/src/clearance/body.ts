import { type Bounds, boundsOf, type DepthBody, depthBody } from '../geometry/index.js';
import { dot3, subtract3, type Vec3 } from '../numeric/index.js';
import type { OuterSolid } from '../pan/index.js';

/** What is told of two things that meet: how deep one lies in the other, or how far it must be shifted to part. */
export type MeetMeasure = 'depth' | 'shift';

/** Solids that move together, with what distances to them need. */
export interface Body {
  readonly measure: MeetMeasure;
  readonly solids: readonly BodySolid[];
  readonly bounds: readonly Bounds[];
  /** Made on first use: only something that meets the body needs its surface. */
  readonly depth: () => DepthBody;
}

export type BodySolid = Pick<OuterSolid, 'name' | 'vertices' | 'faces' | 'faceNames'>;

export const bodyOf = (solids: readonly BodySolid[], measure: MeetMeasure = 'depth'): Body => {
  let made: DepthBody | null = null;
  return {
    measure,
    solids,
    bounds: solids.map((s) => boundsOf(s.vertices)),
    depth: () => {
      made ??= depthBody(solids);
      return made;
    },
  };
};

/** Name of faces that only close a solid. */
export const BEHIND_FACE = 'behind';
/** Names of faces where pieces of one body meet or that close it; nothing is ever said to be nearest to them. */
const HIDDEN = new Set(['inside', 'rail plane', BEHIND_FACE]);

/** Whether a face is part of a body's outside, by its name. */
export const isOuterFace = (name: string): boolean => !HIDDEN.has(name);

/** The face of a solid that a point on it belongs to: of those it lies on, the one that looks most along `toward`. */
export const faceNameAt = (solid: BodySolid, at: Vec3, toward: Vec3): string =>
  facingAt(solid, at, toward)?.name ?? solid.name;

/** The same over a whole body, for solids that share faces. */
export const bodyNameAt = (body: Body, at: Vec3, toward: Vec3): string | null =>
  body.solids.reduce<{ readonly name: string; readonly facing: number } | null>((best, solid, i) => {
    const { low, high } = body.bounds[i]!;
    if (([0, 1, 2] as const).some((k) => at[k] < low[k] - 1e-4 || at[k] > high[k] + 1e-4)) return best;
    const found = facingAt(solid, at, toward);
    return found !== null && (best === null || found.facing > best.facing) ? found : best;
  }, null)?.name ?? null;

const facingAt = (
  solid: BodySolid,
  at: Vec3,
  toward: Vec3,
): { readonly name: string; readonly facing: number } | null => {
  let found: { readonly name: string; readonly facing: number } | null = null;
  for (const [i, face] of solid.faces.entries()) {
    if (!isOuterFace(solid.faceNames[i]!)) continue;
    const [a, b, c] = cornersFarApart(face.map((k) => solid.vertices[k]!));
    const [u, v] = [subtract3(b, a), subtract3(c, a)];
    const n: Vec3 = [u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]];
    const size = Math.hypot(n[0], n[1], n[2]);
    if (size === 0 || Math.abs(dot3(n, subtract3(at, a))) > 1e-4 * size) continue;
    const facing = dot3(n, toward) / size;
    if (found === null || facing > found.facing) found = { name: solid.faceNames[i]!, facing };
  }
  return found;
};

const cornersFarApart = (loop: readonly Vec3[]): readonly [Vec3, Vec3, Vec3] => {
  const third = Math.max(1, Math.floor(loop.length / 3));
  return [loop[0]!, loop[third]!, loop[Math.max(third + 1, Math.floor((2 * loop.length) / 3))]!];
};

import { length3, subtract3, type Vec3 } from '../numeric/index.js';
import type { SkinEdge } from './skin-seams.js';

/** A stretch of a seam without a break, mm, pan axes; both lists run along together, point by point. */
export interface SeamLine {
  /** Where the inside edges meet: its length is the seam's, arcs as chords. */
  readonly root: readonly Vec3[];
  /** Where the torch runs: the corner of the outside faces for a seam laid outside. */
  readonly face: readonly Vec3[];
}

/** A line whose root is where it is laid. */
export const plainLine = (points: readonly Vec3[]): SeamLine => ({ root: points, face: points });

/** Length of lines along their roots, mm. */
export const rootLength = (lines: readonly SeamLine[]): number =>
  lines.reduce(
    (sum, { root }) => sum + root.slice(1).reduce((s, p, i) => s + length3(subtract3(p, root[i] as Vec3)), 0),
    0,
  );

/**
 * Edges of the skin joined end to end into lines, root and face looked up in two lists of points.
 *
 * Where more than two edges meet at a point a line ends there or runs on along one of them.
 */
export const linesOfEdges = (
  edges: readonly SkinEdge[],
  root: readonly Vec3[],
  face: readonly Vec3[],
): readonly SeamLine[] =>
  chained(edges).map((places) => ({
    root: places.map((place) => root[place] as Vec3),
    face: places.map((place) => face[place] as Vec3),
  }));

const chained = (edges: readonly SkinEdge[]): readonly (readonly number[])[] => {
  const at = new Map<number, Set<number>>();
  edges.forEach((ends, i) => {
    for (const place of ends) at.set(place, (at.get(place) ?? new Set()).add(i));
  });
  const left = new Set(edges.keys());
  const walk = (from: number): number[] => {
    const places = [from];
    for (let here = from; ; ) {
      const next = [...(at.get(here) ?? [])].find((i) => left.has(i));
      if (next === undefined) return places;
      left.delete(next);
      const [a, b] = edges[next] as SkinEdge;
      here = a === here ? b : a;
      places.push(here);
    }
  };
  // Loose ends first, so that an open line is not begun in its middle; what is left then are rings.
  const ends = [...at].filter(([, own]) => own.size === 1).map(([place]) => place);
  const starts = [...ends, ...edges.map(([a]) => a)];
  return starts.map(walk).filter((places) => places.length > 1);
};

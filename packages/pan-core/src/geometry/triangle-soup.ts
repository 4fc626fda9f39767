import { type SoupTree, soupTree } from './soup-tree.js';

/** Triangles as a scanner leaves them: no neighbours known, holes, flipped and degenerate ones among them. */
export interface TriangleSoup {
  /** Nine coordinates per triangle. */
  readonly corners: Float32Array;
  readonly count: number;
  /** Made on first use: reading a file does not need it. */
  readonly tree: () => SoupTree;
}

export const triangleSoup = (corners: Float32Array): TriangleSoup => {
  let made: SoupTree | null = null;
  return {
    corners,
    count: corners.length / 9,
    tree: () => {
      made ??= soupTree(corners);
      return made;
    },
  };
};

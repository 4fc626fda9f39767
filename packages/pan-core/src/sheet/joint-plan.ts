import type { Design } from '../design/index.js';
import { PanError, type Problem } from '../errors/index.js';
import { nearestWord } from '../units/index.js';
import type { Leaf } from './leaf.js';
import type { LeafEdge } from './leaf-edge.js';

/**
 * The edges that fold: those inside each usual part, those that the design adds, less those that it welds.
 *
 * @throws PanError `shape-fold` for a name that is no face, faces that share no edge, or folds that close a ring
 */
export const foldedEdges = (
  design: Design,
  leaves: readonly Leaf[],
  edges: readonly LeafEdge[],
): ReadonlySet<LeafEdge> => {
  const { fold, weld } = design.pan.joints;
  const problems: Problem[] = [];
  const asked = (pairs: Design['pan']['joints']['fold'], key: 'fold' | 'weld'): readonly LeafEdge[] =>
    pairs.flatMap((pair, i) => {
      const path = ['pan', 'joints', key, i] as const;
      const found = edgesBetween(pair, path, leaves, edges);
      if ('message' in found) {
        problems.push(found);
        return [];
      }
      const belly = pair.every((name) => ownerOf(leaves, name) === 'belly');
      if (belly && found.edges.some((e) => usual(leaves, e) === (key === 'weld')))
        problems.push(bellyCorner(path, pair, key));
      return found.edges;
    });
  const [added, taken] = [asked(fold, 'fold'), asked(weld, 'weld')];
  if (problems.length > 0) throw new PanError(problems);
  const folds = new Set(edges.filter((e) => added.includes(e) || (usual(leaves, e) && !taken.includes(e))));
  refuseRings(leaves, folds);
  return folds;
};

const usual = (leaves: readonly Leaf[], { a, b }: LeafEdge): boolean =>
  leaves[a.leaf]!.group === leaves[b.leaf]!.group;

const named = (leaves: readonly Leaf[], name: string): number =>
  leaves.findIndex((leaf) => leaf.name.toLowerCase() === name.trim().toLowerCase());

const ownerOf = (leaves: readonly Leaf[], name: string): string | undefined =>
  leaves[named(leaves, name)]?.owner;

const edgesBetween = (
  pair: readonly [string, string],
  path: readonly (string | number)[],
  leaves: readonly Leaf[],
  edges: readonly LeafEdge[],
): { readonly edges: readonly LeafEdge[] } | Problem => {
  const names = leaves.map((leaf) => leaf.name);
  const places = pair.map((name) => named(leaves, name));
  const lost = pair[places.indexOf(-1)];
  if (lost !== undefined) {
    const near = nearestWord(lost, names);
    return {
      code: 'shape-fold',
      path,
      message: `This pan has no face called "${lost}".`,
      expected: near ?? `one of: ${names.join(', ')}`,
      found: lost,
      advice: near === null ? `Its faces are: ${names.join(', ')}.` : `Did you mean ${near}?`,
    };
  }
  const [p, q] = places as [number, number];
  const shared = edges.filter(({ a, b }) => (a.leaf === p && b.leaf === q) || (a.leaf === q && b.leaf === p));
  if (shared.length > 0) return { edges: shared };
  const beside = neighbours(edges, p).map((i) => names[i]);
  return {
    code: 'shape-fold',
    path,
    message: `"${names[p]}" and "${names[q]}" share no edge.`,
    expected: `a face beside "${names[p]}": ${beside.join(', ')}`,
    found: names[q],
    advice: 'Name two faces that meet along an edge.',
  };
};

const neighbours = (edges: readonly LeafEdge[], leaf: number): readonly number[] => [
  ...new Set(edges.flatMap(({ a, b }) => (a.leaf === leaf ? [b.leaf] : b.leaf === leaf ? [a.leaf] : []))),
];

/** Whether a corner of the floor is formed or sharp changes the pan's inside, so that it is said elsewhere. */
const bellyCorner = (
  path: readonly (string | number)[],
  [first, second]: readonly [string, string],
  key: 'fold' | 'weld',
): Problem => ({
  code: 'shape-fold',
  path,
  message:
    key === 'weld'
      ? `"${first}" and "${second}" are runs of the belly, whose corners change the pan’s inside when they are welded.`
      : `"${first}" and "${second}" meet at a corner of the belly that pan.joints.welded calls welded.`,
  advice:
    key === 'weld'
      ? 'Write the floor point of that corner into pan.joints.welded instead.'
      : 'Take the floor point of that corner out of pan.joints.welded instead.',
});

/** A part that folds back on itself cannot be cut flat: the folds must be a tree. */
const refuseRings = (leaves: readonly Leaf[], folds: ReadonlySet<LeafEdge>): void => {
  const root = leaves.map((_, i) => i);
  const find = (i: number): number => (root[i] === i ? i : find(root[i]!));
  const joined = new Set<string>();
  for (const { a, b } of folds) {
    // Two stretches of one edge, parted by a notch, are one fold.
    const pair = [a.leaf, b.leaf].sort((m, n) => m - n).join('/');
    if (joined.has(pair)) continue;
    joined.add(pair);
    const [p, q] = [find(a.leaf), find(b.leaf)];
    if (p !== q) {
      root[p] = q;
      continue;
    }
    throw new PanError({
      code: 'shape-fold',
      path: ['pan', 'joints', 'fold'],
      message: `With the fold between "${leaves[a.leaf]!.name}" and "${leaves[b.leaf]!.name}" the folds close a ring, and a ring does not lie flat.`,
      advice: 'Put one edge of that ring into pan.joints.weld.',
    });
  }
};

/** Leaves that hang together by folds, each group in order of its leaves. */
export const foldTrees = (count: number, folds: ReadonlySet<LeafEdge>): readonly (readonly number[])[] => {
  const seen = new Set<number>();
  return Array.from({ length: count }, (_, i) => i).flatMap((i) => {
    if (seen.has(i)) return [];
    const tree = [i];
    seen.add(i);
    for (const at of tree)
      for (const { a, b } of folds) {
        const next = a.leaf === at ? b.leaf : b.leaf === at ? a.leaf : null;
        if (next === null || seen.has(next)) continue;
        seen.add(next);
        tree.push(next);
      }
    return [tree];
  });
};

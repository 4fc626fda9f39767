import { dot3, subtract3, type Vec3 } from '../numeric/index.js';
import type { PanModel } from '../pan/index.js';
import { bendRule, type Leaf, sheetTrees, treeNames } from '../sheet/index.js';
import type { Skin, SkinPiece } from './skin.js';
import { FLANGE_KEY, type SkinParts } from './skin-part.js';

/** The faces of a pan that is folded as the design asks: each is a key of its own, and what folds is no seam. */
export const treeSkinParts = ({ design, profile }: PanModel, skin: Skin): SkinParts => {
  const trees = sheetTrees({ design, profile, rule: bendRule(design) });
  const names = treeNames(trees);
  const folded = new Set(
    [...trees.folds].flatMap(({ a, b }) => [`${a.leaf}|${b.leaf}`, `${b.leaf}|${a.leaf}`]),
  );
  const partOf = new Map(trees.blanks.flatMap((blank, i) => blank.leaves.map((leaf) => [leaf, names[i]!])));
  const keyOf = (piece: SkinPiece): string => {
    const own = trees.leaves.flatMap((leaf, i) =>
      leaf.owner === piece.owner && leaf.index === piece.index ? [i] : [],
    );
    if (own.length === 0) return FLANGE_KEY;
    const centre = middle(piece.loop.map((place) => skin.points[place]!));
    const away = own.map((i) => distanceTo(trees.leaves[i]!, centre));
    return String(own[away.indexOf(Math.min(...away))]);
  };
  return {
    keyOf,
    nameOf: (key) => trees.leaves[Number(key)]?.name ?? key,
    partOf: (key) => partOf.get(Number(key)) ?? key,
    folded: (a, b) => folded.has(`${a}|${b}`),
  };
};

const middle = (loop: readonly Vec3[]): Vec3 => [mean(loop, 0), mean(loop, 1), mean(loop, 2)];

const mean = (loop: readonly Vec3[], axis: 0 | 1 | 2): number =>
  loop.reduce((sum, p) => sum + p[axis], 0) / loop.length;

/** Distance from a point to the box round a leaf in the leaf's own axes. */
const distanceTo = (leaf: Leaf, p: Vec3): number => {
  const r = subtract3(p, leaf.origin);
  const beyond = (axis: Vec3): number => {
    const reach = leaf.loops[0]!.map((q) => dot3(subtract3(q, leaf.origin), axis));
    const at = dot3(r, axis);
    return Math.max(0, Math.min(...reach) - at, at - Math.max(...reach));
  };
  return Math.hypot(dot3(r, leaf.normal), beyond(leaf.u), beyond(leaf.v));
};

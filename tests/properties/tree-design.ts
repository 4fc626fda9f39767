import type { Design } from 'pan-core/design/index.js';
import { PanError } from 'pan-core/errors/index.js';
import { floorProfile, type Profile } from 'pan-core/pan/index.js';
import { bendRule, type SheetTrees, sheetTrees } from 'pan-core/sheet/index.js';
import { randomFrom } from '../random.js';
import { randomDesign } from '../random-design.js';

type Pair = readonly [string, string];

/** A random pan folded along random edges, or why it cannot be. */
export type TreeCase =
  | {
      readonly seed: number;
      readonly design: Design;
      readonly profile: Profile;
      readonly trees: SheetTrees;
      readonly refused: null;
    }
  | { readonly seed: number; readonly design: Design; readonly refused: string };

export const treesOf = (design: Design): SheetTrees =>
  sheetTrees({ design, profile: floorProfile(design), rule: bendRule(design) });

/** Null where the pan itself is refused before anything is folded. */
export const treeCase = (seed: number): TreeCase | null => {
  const plain = { ...randomDesign(seed), baffles: [] };
  let usual: SheetTrees;
  try {
    usual = treesOf(plain);
  } catch (error) {
    if (error instanceof PanError) return null;
    throw error;
  }
  const design = withJoints(plain, randomJoints(usual, randomFrom(seed ^ 0x5eed)));
  try {
    return { seed, design, profile: floorProfile(design), trees: treesOf(design), refused: null };
  } catch (error) {
    if (error instanceof PanError) return { seed, design, refused: error.problems[0]!.message };
    throw error;
  }
};

const withJoints = (design: Design, joints: { fold: readonly Pair[]; weld: readonly Pair[] }): Design => ({
  ...design,
  pan: { ...design.pan, joints: { ...design.pan.joints, ...joints } },
});

/** Some usual folds taken off, and others put on wherever they close no ring. */
const randomJoints = (
  { leaves, edges, folds }: SheetTrees,
  r: () => number,
): { fold: readonly Pair[]; weld: readonly Pair[] } => {
  const root = leaves.map((_, i) => i);
  const find = (i: number): number => (root[i] === i ? i : find(root[i]!));
  const pairs = new Map(edges.map((e) => [[e.a.leaf, e.b.leaf].sort((m, n) => m - n).join(), e] as const));
  const names = (e: (typeof edges)[number]): Pair => [leaves[e.a.leaf]!.name, leaves[e.b.leaf]!.name];
  const belly = (e: (typeof edges)[number]): boolean =>
    [e.a, e.b].every((p) => leaves[p.leaf]!.owner === 'belly');
  const [fold, weld]: [Pair[], Pair[]] = [[], []];
  const asked = [...pairs.values()].map((e) => ({ e, usual: folds.has(e), place: r(), wish: r() }));
  for (const { e } of asked.filter((q) => q.usual)) {
    if (!belly(e) && r() < 0.2) weld.push(names(e));
    else root[find(e.a.leaf)] = find(e.b.leaf);
  }
  for (const { e } of asked.filter((q) => !q.usual && q.wish < 0.12).sort((a, b) => a.place - b.place)) {
    if (belly(e) || weld.some((w) => w.join() === names(e).join()) || find(e.a.leaf) === find(e.b.leaf))
      continue;
    root[find(e.a.leaf)] = find(e.b.leaf);
    fold.push(names(e));
  }
  return { fold, weld };
};

import { PanError } from '../errors/index.js';
import {
  circlePath,
  cross2,
  directionAt,
  distance2,
  dot2,
  left2,
  mix2,
  type Path,
  subtractPath,
} from '../geometry/index.js';
import type { Vec2 } from '../numeric/index.js';
import { baffleMarks } from './baffle-mark.js';
import { bellyHoles, bungHoles, mouthMark } from './belly-hole.js';
import type { CutJob } from './cut-job.js';
import { type Facet, facetLocal } from './cutter.js';
import { endSealMarks } from './end-seal-mark.js';
import { finishRegion } from './finish.js';
import { blankOverlaps } from './flat-overlap.js';
import { cornerNames } from './fold-name.js';
import { foldedEdges, foldTrees } from './joint-plan.js';
import practice from './joint-practice.json' with { type: 'json' };
import { jointed, type Leaf } from './leaf.js';
import { FLAT_TURN, type LeafEdge, leafEdges, type RimPlace } from './leaf-edge.js';
import { panLeaves } from './make-up.js';
import type { Fold, Part } from './part.js';
import { edgeWords } from './strip.js';
import { touchingRims } from './touching-rim.js';
import { type Blank, type FlatFold, layFlat } from './unfold.js';
import { weldTrims } from './weld-edge.js';

/** The pan's sheet as trees of faces: what folds to what, and each tree laid flat. */
export interface SheetTrees {
  readonly leaves: readonly Leaf[];
  readonly edges: readonly LeafEdge[];
  readonly folds: ReadonlySet<LeafEdge>;
  readonly blanks: readonly Blank[];
}

/**
 * Unfolds the pan along the edges that the design folds.
 *
 * @throws PanError `shape-fold` for names that are no faces, rings, bends with no room, and sheet wanted twice
 */
export const sheetTrees = ({
  design,
  profile,
  rule,
}: Pick<CutJob, 'design' | 'profile' | 'rule'>): SheetTrees => {
  const leaves = jointed(panLeaves(design, profile));
  const edges = leafEdges(leaves);
  const folds = foldedEdges(design, leaves, edges);
  const { bendRadius: radius, thickness } = design.pan.sheet;
  const bending = {
    radius,
    thickness,
    allowance: rule.allowance,
    slit: practice.relief_in_thicknesses * thickness,
  };
  const trims = edges.flatMap((edge) => {
    const trim = folds.has(edge) ? null : weldTrims(leaves, edge, thickness);
    return trim === null ? [] : [trim];
  });
  const same = (a: RimPlace, b: RimPlace): boolean =>
    a.leaf === b.leaf && a.loop === b.loop && a.edge === b.edge;
  const trimAt = (place: RimPlace): number => trims.find((t) => same(t.place, place))?.trim ?? 0;
  const slit = practice.slit_in_thicknesses * thickness;
  const blanks = foldTrees(leaves.length, folds).map((members) => {
    const lay = (inset: (place: RimPlace) => number): Blank =>
      layFlat(leaves, edges, members, folds, bending, inset);
    const first = lay(trimAt);
    const touching = touchingRims(leaves, first, folds);
    const blank =
      touching.length === 0
        ? first
        : lay((place) => Math.max(trimAt(place), touching.some((t) => same(t, place)) ? slit : 0));
    refuseShort(leaves, blank, practice.shortest_fold_in_thicknesses * thickness);
    refuseOverlap(leaves, blank);
    return blank;
  });
  return { leaves, edges, folds, blanks };
};

/** A bend hardly longer than the reliefs at its ends is no bend. */
const refuseShort = (leaves: readonly Leaf[], { folds }: Blank, limit: number): void => {
  for (const { edge, allowance, zone } of folds) {
    const length = Math.min(distance2(zone[0], zone[1]), distance2(zone[2], zone[3]));
    if (allowance === 0 || length >= limit) continue;
    throw new PanError({
      code: 'shape-fold',
      path: ['pan', 'joints', 'fold'],
      message: `The fold between "${leaves[edge.a.leaf]!.name}" and "${leaves[edge.b.leaf]!.name}" is ${length.toFixed(1)} mm long at one place and must be ${limit.toFixed(1)} mm.`,
      value: length,
      limit,
      unit: 'mm',
      advice: 'Weld that edge, or move what cuts the fold short: a wing’s or a notch’s end.',
    });
  }
};

const refuseOverlap = (leaves: readonly Leaf[], blank: Blank): void => {
  const [worst] = blankOverlaps(blank);
  if (worst === undefined) return;
  const [p, q] = [leaves[worst.first]!.name, leaves[worst.second]!.name];
  throw new PanError({
    code: 'shape-fold',
    path: ['pan', 'joints', 'fold'],
    message: `Folded this way "${p}" and "${q}" want the same ${worst.area.toFixed(0)} mm² of sheet.`,
    value: worst.area,
    limit: 0,
    unit: 'mm2',
    advice: 'Fold along another edge, or weld one of the edges between them (pan.joints.weld).',
  });
};

/** A part for each tree of faces, with holes, marks, folds and corner reliefs. */
export const treeParts = (job: CutJob): readonly Part[] => {
  const trees = sheetTrees(job);
  const names = treeNames(trees);
  return trees.blanks.flatMap((blank, i) => treePart(job, trees, blank, names[i]!));
};

/**
 * Each tree's name: its usual parts, joined by "with", or a face that came off its usual part alone; numbered where
 * two are alike.
 */
export const treeNames = ({ leaves, blanks }: Pick<SheetTrees, 'leaves' | 'blanks'>): readonly string[] => {
  const words = blanks.map((blank) => {
    const [only, ...more] = blank.leaves.map((i) => leaves[i]!);
    if (only !== undefined && more.length === 0 && leaves.some((l) => l !== only && l.group === only.group))
      return only.name;
    const [first, ...rest] = new Set(blank.leaves.map((i) => leaves[i]!.group));
    return rest.length === 0 ? first! : `${first} with ${rest.join(' and ')}`;
  });
  return words.map((word, i) => {
    if (words.filter((w) => w === word).length === 1) return word;
    return `${word} ${words.slice(0, i + 1).filter((w) => w === word).length}`;
  });
};

const treePart = (job: CutJob, trees: SheetTrees, blank: Blank, name: string): readonly Part[] => {
  const { design, rule, plates } = job;
  const { sheet } = design.pan;
  const facets = blank.leaves.map((i) => leafFacet(trees.leaves[i]!, blank, i));
  const belly = blank.leaves.flatMap((i, k) => (trees.leaves[i]!.owner === 'belly' ? [facets[k]!] : []));
  const relief = (practice.relief_in_thicknesses * sheet.thickness) / 2;
  const reliefs = tightCorners(blank);
  const region = reliefs.reduce((left, at) => subtractPath(left, circlePath(at, relief)), {
    loops: blank.loops,
  });
  const error = Math.max(0, ...blank.folds.map((fold) => fold.chordError));
  const sideFolds = blank.folds.filter(({ edge }) => crossesOwners(trees.leaves, edge)).length;
  return finishRegion(
    {
      name,
      what: `${blank.leaves.map((i) => trees.leaves[i]!.name).join(', ')}, from one piece.`,
      quantity: 1,
      material: sheet.material,
      thickness: sheet.thickness,
      drawnFace: 'oil side',
      faces: facets,
      holes: [
        ...(belly.length > 0 ? bellyHoles(design, belly) : []),
        ...bungHoles(
          design,
          facets.filter((f) => !belly.includes(f)),
        ),
      ],
      folds: blank.folds.flatMap((fold) => (fold.edge.angle < FLAT_TURN ? [] : [foldOf(job, trees, fold)])),
      marks: [...mouthMark(design, belly), ...baffleMarks(facets, plates), ...endSealMarks(design, belly)],
      notes: [
        `Inside face up; "${trees.leaves[blank.leaves[0]!]!.name}" lies as it is seen from the oil. Bends: ${rule.words}.`,
        ...(error > 0.005 ? [edgeWords(error)] : []),
        ...(reliefs.length > 0
          ? [
              `${reliefs.length} corner reliefs ${(2 * relief).toFixed(1)} mm across where bends meet (common practice, no source): fill them with weld.`,
            ]
          : []),
        ...(sideFolds > 0
          ? [
              'Where a side folds up from the floor the inside corner is round; volumes and clearances are reckoned with it sharp.',
            ]
          : []),
      ],
    },
    region,
  );
};

const crossesOwners = (leaves: readonly Leaf[], { a, b }: LeafEdge): boolean =>
  leaves[a.leaf]!.owner !== leaves[b.leaf]!.owner;

const leafFacet = (leaf: Leaf, blank: Blank, i: number): Facet => {
  const { at, along } = blank.placements.get(i)!;
  const frame = { origin: leaf.origin, u: leaf.u, v: leaf.v };
  const local = leaf.loops[0]!.map((p) => facetLocal({ ...frame } as Facet, p));
  const [s, t] = [local.map((p) => p[0]), local.map((p) => p[1])];
  const [s0, s1, t0, t1] = [Math.min(...s), Math.max(...s), Math.min(...t), Math.max(...t)];
  return {
    ...frame,
    bounds: [
      [s0, t0],
      [s1, t0],
      [s1, t1],
      [s0, t1],
    ],
    at,
    along,
    across: left2(along),
    bend: false,
  };
};

const foldOf = ({ design, profile }: CutJob, { leaves }: SheetTrees, fold: FlatFold): Fold => {
  const { edge, onA, onB, allowance } = fold;
  const [p, q] = [leaves[edge.a.leaf]!, leaves[edge.b.leaf]!];
  const middle = mix3(edge.from, edge.to);
  const corner =
    p.owner === 'belly' && q.owner === 'belly'
      ? nearestCorner(
          profile.corners.map((c) => c.at),
          [middle[0], middle[2]],
        )
      : null;
  return {
    name: corner === null ? facesWords(design, p, q) : (cornerNames(profile)[corner] ?? 'fold'),
    from: mix2(onA[0], onB[0], 0.5),
    to: mix2(onA[1], onB[1], 0.5),
    angle: edge.angle,
    radius: design.pan.sheet.bendRadius,
    direction: edge.oilInside ? 'up' : 'down',
    allowance,
  };
};

/** Both faces of a fold; two of one wing name it once. */
const facesWords = (design: CutJob['design'], p: Leaf, q: Leaf): string => {
  const wing = p.owner === 'wing' && q.owner === 'wing' && p.index === q.index ? p.index : -1;
  const prefix = `${design.pan.wings[wing]?.name ?? ''} `;
  return `${p.name} to ${wing >= 0 && q.name.startsWith(prefix) ? q.name.slice(prefix.length) : q.name}`;
};

const mix3 = (a: readonly number[], b: readonly number[]): readonly [number, number, number] => [
  (a[0]! + b[0]!) / 2,
  (a[1]! + b[1]!) / 2,
  (a[2]! + b[2]!) / 2,
];

const nearestCorner = (corners: readonly Vec2[], p: Vec2): number => {
  const away = corners.map((c) => distance2(c, p));
  return away.indexOf(Math.min(...away));
};

/** A turn back into the metal beyond this at the end of a fold wants a relief, radians. */
const REENTRANT = Math.PI / 9;

/** Fold ends at which the outline turns back into the sheet: there the bend would tear it. */
const tightCorners = (blank: Blank): readonly Vec2[] => {
  // An end that was drawn in has a slit already.
  const ends = blank.folds.flatMap(({ onA, onB, zone, allowance }) =>
    allowance > 0 ? [onA[0], onA[1], onB[1], onB[0]].filter((p, i) => distance2(p, zone[i]!) < 1e-6) : [],
  );
  return blank.loops.flatMap((loop: Path) =>
    loop.flatMap((piece, i): readonly Vec2[] => {
      const before = loop[(i + loop.length - 1) % loop.length]!;
      const [u, v] = [directionAt(before, 1), directionAt(piece, 0)];
      const turn = Math.atan2(cross2(u, v), dot2(u, v));
      if (turn > -REENTRANT) return [];
      return ends.some((p) => distance2(p, piece.from) < 1e-6) ? [piece.from] : [];
    }),
  );
};

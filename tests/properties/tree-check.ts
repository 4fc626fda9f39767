import { pathArea, pathPoints, segmentLength } from 'pan-core/geometry/index.js';
import { halfWidthAt, type Profile } from 'pan-core/pan/index.js';
import { bendRule, leafFlat, treeParts } from 'pan-core/sheet/index.js';
import { mirrored } from '../mirror-design.js';
import { type SetImage, setImage } from './mirror-image.js';
import { closing } from './refold.js';

import type { TreeCase } from './tree-design.js';

type Made = Extract<TreeCase, { refused: null }>;

/** The worst of each over the trees of one design; mm, mm² or shares. */
export interface TreeErrors {
  /** Corners of the pan against the bent blank, mm. */
  readonly closing: number;
  /** Belly runs between tangent lines against the floor's own straight pieces, mm. */
  readonly runs: number;
  /** Belly tangent lines against the pan's width there, mm. */
  readonly widths: number;
  /** Outline against the sum of its flat pieces, share of the area. */
  readonly area: number;
  /** True edge across belly bends beyond the error that is reported, mm. */
  readonly beyondReported: number;
  /** Images of parts in a mirror against the parts of the mirrored design, cuts, holes and folds, mm. */
  readonly mirror: number;
  /** How many parts differ from their own image. */
  readonly handed: number;
  /** Longest stretch of a line that two pieces of one blank share, mm. */
  readonly overlap: number;
  /** How many runs and widths were compared. */
  readonly compared: number;
}

export const treeErrors = (made: Made): TreeErrors => {
  const { design, trees } = made;
  const { bendRadius, thickness } = design.pan.sheet;
  const belly = bellyErrors(made);
  const image = mirrorImage(made);
  return {
    closing: Math.max(...trees.blanks.map((blank) => closing(trees, blank, leafFlat, bendRadius, thickness))),
    ...belly,
    area: Math.max(...trees.blanks.map((_, i) => areaError(made, i))),
    mirror: image.worst,
    handed: image.handed,
    overlap: Math.max(...trees.blanks.map(overlap)),
  };
};

/** Sum of the shoelace and arc-segment areas of every piece, in each leaf's own axes, against the outline's. */
const areaError = ({ trees }: Made, i: number): number => {
  const blank = trees.blanks[i]!;
  const outline = blank.loops.reduce((sum, loop) => sum + pathArea(loop), 0);
  const leaves = blank.leaves.flatMap((leaf) => blank.leafLoops.get(leaf)!);
  const zones = blank.folds.map(({ zone: [a, b, c, d] }) => {
    return Math.abs((c[0] - a[0]) * (d[1] - b[1]) - (d[0] - b[0]) * (c[1] - a[1])) / 2;
  });
  const pieces = leaves.reduce((sum, loop) => sum + pathArea(loop), 0) + zones.reduce((s, z) => s + z, 0);
  return Math.abs(outline - pieces) / pieces;
};

/** Lines laid over a blank to see whether two of its pieces lie on one of them at one place. */
const ROWS = 97;

/** Longest stretch of a line across the blank that two of its pieces cover, mm; chords stand for arcs. */
const overlap = (blank: Made['trees']['blanks'][number]): number => {
  const pieces = [
    ...blank.leaves.map((leaf) =>
      blank.leafLoops.get(leaf)!.map((path) => pathPoints(path, 0.001).slice(0, -1)),
    ),
    ...blank.folds.flatMap(({ zone, allowance }) => (allowance > 0 ? [[[...zone]]] : [])),
  ];
  const heights = pieces.flat(2).map((p) => p[1]);
  const [low, high] = [Math.min(...heights), Math.max(...heights)];
  let worst = 0;
  for (let i = 0; i < ROWS; i++) {
    // Between the corners: a line along an edge is no test.
    const y = low + ((i + 0.4142) / ROWS) * (high - low);
    const covered = pieces.flatMap((loops) => stretches(loops, y)).sort((a, b) => a[0] - b[0]);
    covered.slice(1).forEach(([from, to], k) => {
      worst = Math.max(worst, Math.min(to, covered[k]![1]) - from);
    });
  }
  return worst;
};

/** Where a level line runs inside loops, by counting crossings. */
const stretches = (
  loops: readonly (readonly (readonly [number, number])[])[],
  y: number,
): readonly (readonly [number, number])[] => {
  const at = loops
    .flatMap((loop) =>
      loop.flatMap((p, i) => {
        const q = loop[(i + 1) % loop.length]!;
        return p[1] < y === q[1] < y ? [] : [p[0] + ((y - p[1]) / (q[1] - p[1])) * (q[0] - p[0])];
      }),
    )
    .sort((a, b) => a - b);
  return at.flatMap((x, i) => (i % 2 === 0 ? [[x, at[i + 1]!] as const] : []));
};

/** What the belly must be from floor and half-widths alone, where nothing is cut out of it or folded to it. */
const bellyErrors = (made: Made): Pick<TreeErrors, 'runs' | 'widths' | 'beyondReported' | 'compared'> => {
  const { design, profile, trees } = made;
  let [runs, widths, beyondReported, compared] = [0, 0, 0, 0];
  if (design.pan.notches.length > 0) return { runs, widths, beyondReported, compared };
  const straights = profile.path.filter((s) => s.kind === 'line').map(segmentLength);
  for (const blank of trees.blanks) {
    const bends = blank.folds.filter(
      ({ edge, allowance }) =>
        allowance > 0 && [edge.a, edge.b].every((p) => trees.leaves[p.leaf]!.owner === 'belly'),
    );
    for (const leaf of blank.leaves) {
      const own = bends.flatMap(({ edge, onA, onB }) =>
        edge.a.leaf === leaf ? [onA] : edge.b.leaf === leaf ? [onB] : [],
      );
      if (own.length !== 2) continue;
      const [p, q] = own as [(typeof own)[number], (typeof own)[number]];
      const d = [p[1][0] - p[0][0], p[1][1] - p[0][1]] as const;
      const length = Math.abs((q[0][0] - p[0][0]) * d[1] - (q[0][1] - p[0][1]) * d[0]) / Math.hypot(...d);
      runs = Math.max(runs, Math.min(...straights.map((s) => Math.abs(s - length))));
      compared++;
    }
    for (const fold of bends) {
      const touched = blank.folds.some(
        (f) =>
          f !== fold &&
          !bends.includes(f) &&
          [f.edge.a.leaf, f.edge.b.leaf].some((i) => [fold.edge.a.leaf, fold.edge.b.leaf].includes(i)),
      );
      if (touched) continue;
      const arc = nearestArc(profile, fold.edge.from[0], -fold.edge.from[2]);
      const width = (x: number): number => halfWidthAt(design.pan.left, x) + halfWidthAt(design.pan.right, x);
      const lengths = [fold.onA, fold.onB].map(([a, b]) => Math.hypot(a[0] - b[0], a[1] - b[1]));
      const wanted = [width(arc.from[0]), width(arc.to[0])];
      const off = Math.min(
        Math.max(Math.abs(lengths[0]! - wanted[0]!), Math.abs(lengths[1]! - wanted[1]!)),
        Math.max(Math.abs(lengths[0]! - wanted[1]!), Math.abs(lengths[1]! - wanted[0]!)),
      );
      widths = Math.max(widths, off);
      for (const rows of [design.pan.left, design.pan.right])
        beyondReported = Math.max(beyondReported, arcDeparture(arc, rows) - fold.chordError);
      compared++;
    }
  }
  return { runs, widths, beyondReported, compared };
};

type Arc = Extract<Profile['path'][number], { kind: 'arc' }>;

const nearestArc = ({ path }: Profile, x: number, down: number): Arc => {
  const arcs = path.filter((s): s is Arc => s.kind === 'arc');
  const away = arcs.map(({ from, to }) =>
    Math.hypot((from[0] + to[0]) / 2 - x, (from[1] + to[1]) / 2 + down),
  );
  return arcs[away.indexOf(Math.min(...away))]!;
};

/** How far the half-width along a bend leaves the straight line between its ends, at 200 places. */
const arcDeparture = (arc: Arc, rows: readonly (readonly [number, number])[]): number => {
  const start = Math.atan2(arc.from[1] - arc.centre[1], arc.from[0] - arc.centre[0]);
  const at = (t: number): number =>
    halfWidthAt(rows, arc.centre[0] + arc.radius * Math.cos(start + t * arc.sweep));
  const [a, b] = [at(0), at(1)];
  const off = Array.from({ length: 201 }, (_, i) => Math.abs(at(i / 200) - a - ((b - a) * i) / 200));
  return Math.max(...off);
};

const mirrorImage = ({ design, profile }: Made): SetImage => {
  const swap = (name: string): string =>
    name.replace(/left|right/g, (word) => (word === 'left' ? 'right' : 'left'));
  const flip = (pairs: readonly (readonly [string, string])[]) =>
    pairs.map(([a, b]) => [sideName(a), sideName(b)] as const);
  // A wing keeps its own name in the mirror; sides and notch plates change theirs.
  const sideName = (name: string): string =>
    name.startsWith('side ') || name.startsWith('notch ') ? swap(name) : name;
  const image = mirrored(design);
  const other = {
    ...image,
    pan: {
      ...image.pan,
      joints: {
        ...design.pan.joints,
        fold: flip(design.pan.joints.fold),
        weld: flip(design.pan.joints.weld),
      },
    },
  };
  const parts = (d: typeof design) =>
    treeParts({ design: d, profile, rule: bendRule(d), notches: [], plates: [] });
  return setImage(parts(design), parts(other));
};

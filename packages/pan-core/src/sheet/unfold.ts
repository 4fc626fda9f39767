import { left2, lineSegment, type Path, subtract2, unit2 } from '../geometry/index.js';
import { cross3, subtract3, unit3, type Vec2, type Vec3 } from '../numeric/index.js';
import { bendZone } from './bend-zone.js';
import { outlineLoops } from './blank-outline.js';
import { type Leaf, leafFlat } from './leaf.js';
import { FLAT_TURN, type LeafEdge, type RimPlace, rimKey } from './leaf-edge.js';
import { type CornerBend, type RimCorner, rimCorners } from './leaf-rim.js';
import { onBlank, type Placement, placePath } from './placement.js';
import { type Beyond, zoneChordError } from './zone-chord.js';

/** A bend between two leaves laid flat. */
export interface FlatFold {
  readonly edge: LeafEdge;
  readonly allowance: number;
  /** Ends of the bend zone's sides on leaf a and on leaf b, in the sense in which leaf a runs its edge. */
  readonly onA: readonly [Vec2, Vec2];
  readonly onB: readonly [Vec2, Vec2];
  /** The bend zone: onA and onB, drawn in at an end where a leaf goes on past the fold. */
  readonly zone: readonly [Vec2, Vec2, Vec2, Vec2];
  /** How far the zone's straight ends leave the true edges, mm. */
  readonly chordError: number;
}

/** Leaves that hang together by folds, laid flat in the first one's axes. */
export interface Blank {
  readonly leaves: readonly number[];
  readonly placements: ReadonlyMap<number, Placement>;
  readonly folds: readonly FlatFold[];
  /** Outer loops counter-clockwise, holes clockwise. */
  readonly loops: readonly Path[];
  /** Each leaf's own loops where they lie, fold tangents closed by straight lines. */
  readonly leafLoops: ReadonlyMap<number, readonly Path[]>;
}

export interface Bending {
  readonly radius: number;
  readonly thickness: number;
  readonly allowance: (angle: number) => number;
  /** Width of the cut between a bend and sheet that goes on beside it, mm. */
  readonly slit: number;
}

/** Radius of the oil-side face of a bend. */
const rhoOf = ({ oilInside }: LeafEdge, { radius, thickness }: Bending): number =>
  oilInside ? radius : radius + thickness;

export const setbackOf = (edge: LeafEdge, bending: Bending): number =>
  edge.angle < FLAT_TURN ? 0 : Math.tan(edge.angle / 2) * rhoOf(edge, bending);

/**
 * Lays the leaves of one tree flat, the first in its own axes.
 *
 * @param members leaves that hang together; the first is the root
 * @param folds the edges between them that fold
 * @param inset how far a rim edge that does not fold stops short, mm
 */
export const layFlat = (
  leaves: readonly Leaf[],
  edges: readonly LeafEdge[],
  members: readonly number[],
  folds: ReadonlySet<LeafEdge>,
  bending: Bending,
  inset: (place: RimPlace) => number,
): Blank => {
  const within = [...folds].filter((e) => members.includes(e.a.leaf) && members.includes(e.b.leaf));
  const folded = new Map(within.flatMap((e) => [[rimKey(e.a), e] as const, [rimKey(e.b), e] as const]));
  const rims = new Map(
    members.map((i) => {
      const leaf = leaves[i]!;
      const loops = leaf.loops.map((loop, l) => {
        const places = loop.map((_, edge): RimPlace => ({ leaf: i, loop: l, edge }));
        const insets = places.map((place) => {
          const fold = folded.get(rimKey(place));
          return fold === undefined ? inset(place) : setbackOf(fold, bending);
        });
        const bends = places.map((place) => cornerBend(leaves, edges, folds, place, loop.length, bending));
        return rimCorners(leaf, loop, insets, bends);
      });
      return [i, loops] as const;
    }),
  );
  const placements = placeAll(leaves, members, within, bending);
  const placed = (i: number, p: Vec2): Vec2 => onBlank(placements.get(i)!, p);
  const corner = (place: RimPlace, next: boolean): RimCorner => {
    const loop = rims.get(place.leaf)![place.loop]!;
    return loop[(place.edge + (next ? 1 : 0)) % loop.length]!;
  };
  const beyond = (place: RimPlace): Beyond => {
    const edge = edges.find((e) => rimKey(e.a) === rimKey(place) || rimKey(e.b) === rimKey(place));
    if (edge === undefined) return { normal: null, folds: false };
    const other = rimKey(edge.a) === rimKey(place) ? edge.b : edge.a;
    return { normal: leaves[other.leaf]!.normal, folds: folded.has(rimKey(place)) };
  };
  const flatFolds = within.map((edge): FlatFold => {
    const [a, b] = [edge.a, edge.b];
    const onA = [placed(a.leaf, corner(a, false).leave), placed(a.leaf, corner(a, true).enter)] as const;
    const onB = [placed(b.leaf, corner(b, true).enter), placed(b.leaf, corner(b, false).leave)] as const;
    const past = (place: RimPlace, next: boolean): Vec2 => pastCorner(rims, placements, place, next);
    return {
      edge,
      allowance: edge.angle < FLAT_TURN ? 0 : bending.allowance(edge.angle),
      onA,
      onB,
      zone: bendZone(
        onA,
        onB,
        [past(a, false), past(a, true)],
        [past(b, true), past(b, false)],
        bending.slit,
      ),
      chordError: zoneChordError(leaves, edge, rhoOf(edge, bending), beyond),
    };
  });
  const leafLoops = new Map(
    members.map((i) => [i, rims.get(i)!.map((loop) => wholeLoop(loop, placements.get(i)!))] as const),
  );
  return {
    leaves: members,
    placements,
    folds: flatFolds,
    loops: outlineLoops(members, rims, folded, placements, flatFolds),
    leafLoops,
  };
};

/** Where the rim goes from a corner of it, away from the edge that has its end there. */
const pastCorner = (
  rims: ReadonlyMap<number, readonly (readonly RimCorner[])[]>,
  placements: ReadonlyMap<number, Placement>,
  { leaf, loop, edge }: RimPlace,
  next: boolean,
): Vec2 => {
  const corners = rims.get(leaf)![loop]!;
  const at = (k: number): RimCorner => corners[(k + corners.length) % corners.length]!;
  const [own, far] = next ? [at(edge + 1), at(edge + 2)] : [at(edge), at(edge - 1)];
  const step = own.path.length > 0 ? (next ? own.leave : own.enter) : next ? far.enter : far.leave;
  return onBlank(placements.get(leaf)!, step);
};

/** The bend that a corner follows: its two neighbours are folded to each other along an edge that ends there. */
const cornerBend = (
  leaves: readonly Leaf[],
  edges: readonly LeafEdge[],
  folds: ReadonlySet<LeafEdge>,
  { leaf, loop, edge }: RimPlace,
  count: number,
  bending: Bending,
): CornerBend | null => {
  const at = leaves[leaf]!.loops[loop]![edge]!;
  const neighbour = (k: number): LeafEdge | undefined =>
    edges.find((e) => [e.a, e.b].some((p) => p.leaf === leaf && p.loop === loop && p.edge === k));
  const [e0, e1] = [neighbour((edge + count - 1) % count), neighbour(edge)];
  if (e0 === undefined || e1 === undefined || folds.has(e0) || folds.has(e1)) return null;
  const beyond = (e: LeafEdge): number => (e.a.leaf === leaf ? e.b.leaf : e.a.leaf);
  const [q0, q1] = [beyond(e0), beyond(e1)];
  const fold = [...folds].find(
    (f) =>
      ((f.a.leaf === q0 && f.b.leaf === q1) || (f.a.leaf === q1 && f.b.leaf === q0)) &&
      [f.from, f.to].some((p) => Math.hypot(...subtract3(p, at)) < 1e-6),
  );
  if (fold === undefined || fold.angle < FLAT_TURN) return null;
  const axis = unit3(subtract3(fold.to, fold.from));
  const intoA = cross3(axis, leaves[fold.a.leaf]!.normal);
  const intoB = cross3(leaves[fold.b.leaf]!.normal, axis);
  const inward = (q: number): Vec3 => (q === fold.a.leaf ? intoA : intoB);
  return {
    before: inward(q0),
    after: inward(q1),
    rho: rhoOf(fold, bending),
    angle: fold.angle,
  };
};

const placeAll = (
  leaves: readonly Leaf[],
  members: readonly number[],
  folds: readonly LeafEdge[],
  bending: Bending,
): ReadonlyMap<number, Placement> => {
  const placements = new Map<number, Placement>([[members[0]!, { at: [0, 0], along: [1, 0] }]]);
  const waiting = [members[0]!];
  for (let i = waiting.shift(); i !== undefined; i = waiting.shift()) {
    for (const edge of folds) {
      const child = edge.a.leaf === i ? edge.b.leaf : edge.b.leaf === i ? edge.a.leaf : null;
      if (child === null || placements.has(child)) continue;
      placements.set(child, placeBeside(leaves[i]!, placements.get(i)!, leaves[child]!, edge, i, bending));
      waiting.push(child);
    }
  }
  return placements;
};

/** Across a fold the sharp edges of both leaves lie 2·setback − allowance apart, overlapping where positive. */
const placeBeside = (
  parent: Leaf,
  placed: Placement,
  child: Leaf,
  edge: LeafEdge,
  parentIndex: number,
  bending: Bending,
): Placement => {
  const [a, b] = edge.a.leaf === parentIndex ? [edge.from, edge.to] : [edge.to, edge.from];
  const [pa, pb] = [a, b].map((p) => onBlank(placed, leafFlat(parent, p))) as [Vec2, Vec2];
  const along = unit2(subtract2(pb, pa));
  const [qa, qb] = [leafFlat(child, a), leafFlat(child, b)];
  const own = unit2(subtract2(qb, qa));
  const allowance = edge.angle < FLAT_TURN ? 0 : bending.allowance(edge.angle);
  const shift = 2 * setbackOf(edge, bending) - allowance;
  const left = left2(along);
  // Turns the child's own edge onto the parent's: complex quotient of the two directions.
  const turn: Vec2 = [along[0] * own[0] + along[1] * own[1], along[1] * own[0] - along[0] * own[1]];
  const target: Vec2 = [pa[0] + left[0] * shift, pa[1] + left[1] * shift];
  const image = onBlank({ at: [0, 0], along: turn }, qa);
  return { at: subtract2(target, image), along: turn };
};

const wholeLoop = (corners: readonly RimCorner[], placement: Placement): Path =>
  placePath(
    corners.flatMap((c, i) => [...c.path, lineSegment(c.leave, corners[(i + 1) % corners.length]!.enter)]),
    placement,
  );

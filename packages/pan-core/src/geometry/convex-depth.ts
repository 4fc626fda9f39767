import { dot3, type Vec3 } from '../numeric/index.js';
import { bestFirst } from './best-first.js';
import { hullGap } from './convex-distance.js';
import {
  type Bounds,
  boundsGap,
  boundsOf,
  type ConvexSolid,
  type HalfSpace,
  halfSpacesOf,
} from './convex-solid.js';
import { distanceToFacet, type Facet } from './facet.js';
import { type SimplexBound, simplexBound } from './simplex-bound.js';
import { unionBoundary } from './union-boundary.js';

/** The hull of some points, thickened all round by a radius: a box, a rod with round ends, a swept rod. */
export interface RoundHull {
  readonly points: readonly Vec3[];
  readonly radius: number;
}

/** A union of convex solids made ready for depths. */
export interface DepthBody {
  readonly solids: readonly ConvexSolid[];
  readonly spaces: readonly (readonly HalfSpace[])[];
  readonly bounds: readonly Bounds[];
  readonly boundary: readonly Facet[];
}

export interface Deepest {
  /** How deep the hull's deepest point lies inside the union, mm; never less than the true depth. */
  readonly depth: number;
  readonly at: Vec3;
  /** The surface it is nearest to; null when the two only touch. */
  readonly facet: Facet | null;
}

export const depthBody = (solids: readonly ConvexSolid[]): DepthBody => ({
  solids,
  spaces: solids.map(halfSpacesOf),
  bounds: solids.map((s) => boundsOf(s.vertices)),
  boundary: unionBoundary(solids),
});

type Corners = readonly [Vec3, Vec3, Vec3, Vec3];

interface Cell {
  readonly corners: Corners;
  readonly solid: number;
  readonly facets: readonly Facet[];
  readonly upper: number;
  /** The facets whose distances make the bound, with their share in it. */
  readonly binding: readonly { readonly facet: Facet; readonly share: number }[];
}

/** On the hull or inside it to within this, mm. */
const ON_HULL = 1e-9;
const MOST_CELLS = 3000;
/** Less than this is rounding, mm. */
const NO_SAG = 1e-10;
const CUT_ROUNDS = 4;

/**
 * The point of a hull that lies deepest inside a union of convex solids: farthest from the union's surface.
 * Branch and bound over tetrahedra; on each one the distance to a facet is convex, so its corner values bound
 * it from above, exactly where it is linear. The hull itself enters by planes that touch it, added as needed.
 *
 * @param enough Depths not beyond this are of no interest; the search may stop there.
 * @param tolerance mm; the depth is above the true one by no more, unless the search runs out of cells, when
 * it is above by what remained open.
 */
export const deepestPoint = (
  body: DepthBody,
  hull: RoundHull,
  enough: number,
  tolerance: number,
): Deepest => {
  const touching: HalfSpace[] = [];
  let best: Deepest = { depth: Math.max(enough, 0), at: hull.points[0]!, facet: null };
  const offer = (p: Vec3, facets: readonly Facet[]): void => {
    const near = nearestFacet(facets, p);
    if (near !== null && near.distance > best.depth) {
      best = { depth: near.distance, at: p, facet: near.facet };
    }
  };

  const cellOf = (corners: Corners, solid: number, parents: readonly Facet[]): Cell | null => {
    const facets = facetsNear(corners, parents);
    const values = facets.map((f) => corners.map((p) => distanceToFacet(f, p)));
    for (let round = 0; ; round++) {
      const cuts = cutValues(corners, body.spaces[solid]!, touching);
      const bound = cuts === null ? null : simplexBound(values, cuts);
      if (bound === null) return null;
      const p = mixed(corners, bound.weights);
      const gap = hullGap([p], hull.points);
      const outside = gap.distance - hull.radius;
      if (outside <= ON_HULL) {
        offer(p, facets);
        return { corners, solid, facets, upper: bound.value, binding: bindingOf(bound, facets) };
      }
      const normal: Vec3 = [-gap.toward[0], -gap.toward[1], -gap.toward[2]];
      touching.push({ normal, offset: dot3(normal, gap.onB) + hull.radius });
      const on: Vec3 = [
        gap.onB[0] + normal[0] * hull.radius,
        gap.onB[1] + normal[1] * hull.radius,
        gap.onB[2] + normal[2] * hull.radius,
      ];
      if (body.spaces.some((space) => within(space, on))) offer(on, body.boundary);
      if (round === CUT_ROUNDS) {
        return { corners, solid, facets, upper: bound.value, binding: bindingOf(bound, facets) };
      }
    }
  };

  const open = bestFirst<Cell>((c) => c.upper);
  let ceiling = 0;
  const keep = (cell: Cell | null): void => {
    if (cell === null) return;
    if (cell.upper > best.depth + tolerance) open.push(cell);
    else ceiling = Math.max(ceiling, cell.upper);
  };
  const box = grown(boundsOf(hull.points), hull.radius);
  body.solids.forEach((solid, s) => {
    if (boundsGap(box, body.bounds[s]!) > 0) return;
    if (hullGap(solid.vertices, hull.points).distance > hull.radius) return;
    for (const corners of tetrahedra(common(box, body.bounds[s]!))) keep(cellOf(corners, s, body.boundary));
  });
  for (let count = 0; ; count++) {
    const cell = open.pop();
    if (cell === undefined) break;
    if (cell.upper <= best.depth + tolerance || count === MOST_CELLS) {
      ceiling = Math.max(ceiling, cell.upper);
      break;
    }
    for (const corners of halves(cell)) keep(cellOf(corners, cell.solid, cell.facets));
  }
  return { ...best, depth: Math.max(best.depth, ceiling) };
};

const bindingOf = (bound: SimplexBound, facets: readonly Facet[]): Cell['binding'] =>
  bound.binding.map(({ index, share }) => ({ facet: facets[index]!, share }));

/** Whether a point lies inside planes, or on them to a millionth of a micrometre. */
export const within = (spaces: readonly HalfSpace[], p: Vec3): boolean =>
  spaces.every((h) => dot3(h.normal, p) <= h.offset + ON_HULL);

export const nearestFacet = (
  facets: readonly Facet[],
  p: Vec3,
): { readonly distance: number; readonly facet: Facet } | null => {
  let best: { readonly distance: number; readonly facet: Facet } | null = null;
  for (const facet of facets) {
    const distance = distanceToFacet(facet, p);
    if (best === null || distance < best.distance) best = { distance, facet };
  }
  return best;
};

/** The facets that can be the nearest one somewhere in the cell: a distance changes no faster than the point moves. */
const facetsNear = (corners: Corners, facets: readonly Facet[]): readonly Facet[] => {
  const centre = mixed(corners, [0.25, 0.25, 0.25, 0.25]);
  const reach = Math.max(
    ...corners.map((p) => Math.hypot(p[0] - centre[0], p[1] - centre[1], p[2] - centre[2])),
  );
  const distances = facets.map((f) => distanceToFacet(f, centre));
  const limit = Math.min(...distances) + 2 * reach;
  return facets.filter((_, i) => distances[i]! <= limit);
};

/** Corner values of the planes that part the cell; null when one of them shuts the whole cell out. */
const cutValues = (
  corners: Corners,
  spaces: readonly HalfSpace[],
  touching: readonly HalfSpace[],
): readonly (readonly number[])[] | null => {
  const out: (readonly number[])[] = [];
  for (const list of [spaces, touching])
    for (const h of list) {
      const g = corners.map((p) => dot3(h.normal, p) - h.offset);
      if (g.every((v) => v > ON_HULL)) return null;
      if (g.some((v) => v > 0)) out.push(g);
    }
  return out;
};

const mixed = (corners: Corners, w: readonly [number, number, number, number]): Vec3 => {
  const at = (k: 0 | 1 | 2): number =>
    w[0] * corners[0][k] + w[1] * corners[1][k] + w[2] * corners[2][k] + w[3] * corners[3][k];
  return [at(0), at(1), at(2)];
};

const grown = (b: Bounds, by: number): Bounds => ({
  low: [b.low[0] - by, b.low[1] - by, b.low[2] - by],
  high: [b.high[0] + by, b.high[1] + by, b.high[2] + by],
});

const common = (a: Bounds, b: Bounds): Bounds => {
  const low = (k: 0 | 1 | 2): number => Math.max(a.low[k], b.low[k]);
  // A box that only touches gets a hair of width, so that its tetrahedra have an inside.
  const high = (k: 0 | 1 | 2): number => Math.max(Math.min(a.high[k], b.high[k]), low(k) + ON_HULL);
  return { low: [low(0), low(1), low(2)], high: [high(0), high(1), high(2)] };
};

/** A box as six tetrahedra around its diagonal. */
const tetrahedra = ({ low, high }: Bounds): readonly Corners[] => {
  const corner = (x: boolean, y: boolean, z: boolean): Vec3 => [
    x ? high[0] : low[0],
    y ? high[1] : low[1],
    z ? high[2] : low[2],
  ];
  const [from, to] = [corner(false, false, false), corner(true, true, true)];
  const [x, y, z] = [corner(true, false, false), corner(false, true, false), corner(false, false, true)];
  const [xy, yz, zx] = [corner(true, true, false), corner(false, true, true), corner(true, false, true)];
  return [
    [from, x, xy, to],
    [from, y, xy, to],
    [from, y, yz, to],
    [from, z, yz, to],
    [from, z, zx, to],
    [from, x, zx, to],
  ];
};

/**
 * Cut in two at the middle of the edge along which the binding distances sag most below the straight line
 * between its ends, for that is what the bound gives away; of the longest edge where none does.
 */
const halves = (cell: Cell): readonly [Corners, Corners] => {
  const { corners } = cell;
  const ends = cell.binding.map(({ facet }) => corners.map((p) => distanceToFacet(facet, p)));
  let cut = { a: 0, b: 1, middle: corners[0], sag: -1, length: -1 };
  for (let a = 0; a < 4; a++)
    for (let b = a + 1; b < 4; b++) {
      const [p, q] = [corners[a]!, corners[b]!];
      const middle: Vec3 = [(p[0] + q[0]) / 2, (p[1] + q[1]) / 2, (p[2] + q[2]) / 2];
      const length = Math.hypot(p[0] - q[0], p[1] - q[1], p[2] - q[2]);
      let sag = 0;
      cell.binding.forEach(({ facet, share }, k) => {
        sag += share * ((ends[k]![a]! + ends[k]![b]!) / 2 - distanceToFacet(facet, middle));
      });
      if (sag < NO_SAG) sag = 0;
      if (sag > cut.sag || (sag === cut.sag && length > cut.length)) cut = { a, b, middle, sag, length };
    }
  const put = (at: number, k: 0 | 1 | 2 | 3): Vec3 => (k === at ? cut.middle : corners[k]);
  const swap = (at: number): Corners => [put(at, 0), put(at, 1), put(at, 2), put(at, 3)];
  return [swap(cut.b), swap(cut.a)];
};

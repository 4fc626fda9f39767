import { add3, dot3, scale3, type Vec3 } from '../numeric/index.js';
import { bestFirst } from './best-first.js';
import { type HullGap, hullGap } from './convex-distance.js';
import {
  type Bounds,
  boundsGap,
  boundsOf,
  type ConvexSolid,
  type HalfSpace,
  halfSpacesOf,
} from './convex-solid.js';
import {
  allBeyond,
  distanceToFacet,
  type Facet,
  leastToFacet,
  type NearestFacet,
  nearestFacet,
} from './facet.js';
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

/** Facets whose distances make a bound or cut it down, with their weight in it. */
type Binding = readonly { readonly facet: Facet; readonly share: number }[];

/** A part of the hull still to be looked at: nothing in it is deeper than `upper`. */
interface Place {
  readonly upper: number;
  readonly parts: () => readonly (Place | null)[];
}

/** On the hull or inside it to within this, mm. */
const ON_HULL = 1e-9;
/** A flat hull is parted from its cell by planes that leave nothing between them; with this much, mm, they leave it. */
const AJAR = ON_HULL / 4;
const MOST_PLACES = 3000;
/** Less than this is rounding, mm. */
const NO_SAG = 1e-10;
const ROUNDS = 12;

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
  let ceiling = 0;
  const offer = (at: Vec3, near: NearestFacet | null): void => {
    if (near !== null && near.distance > best.depth) best = { depth: near.distance, at, facet: near.facet };
  };

  /** The facets that can be nearest somewhere among the points, and how deep one of these can be at most. */
  const facetsFor = (points: readonly Vec3[], parents: readonly Facet[]) => {
    const { centre, reach } = ballAround(points);
    // A distance changes no faster than the point moves.
    const least = nearestFacet(parents, centre)?.distance ?? 0;
    return {
      upper: least + reach,
      facets: (): readonly Facet[] => parents.filter((f) => leastToFacet(f, centre) <= least + 2 * reach),
    };
  };

  const cellOf = (corners: Corners, solid: number, parents: readonly Facet[]): Place | null => {
    const rough = facetsFor(corners, parents);
    if (rough.upper <= best.depth + tolerance) return { upper: rough.upper, parts: () => [] };
    const facets = rough.facets();
    const chosen = new Set(corners.flatMap((p) => nearestFacet(facets, p)?.facet ?? []));
    for (let round = 0; ; round++) {
      const list = [...chosen];
      const values = list.map((f) => corners.map((p) => distanceToFacet(f, p)));
      const cuts = cutValues(corners, body.spaces[solid]!, touching);
      const bound = cuts === null ? null : simplexBound(values, cuts);
      if (bound === null) return null;
      const upper = Math.min(bound.value, rough.upper);
      const p = mixed(corners, bound.weights);
      const gap = hullGap([p], hull.points);
      const near = nearestFacet(facets, p);
      const outside = gap.distance - hull.radius > ON_HULL;
      if (outside) touch(gap);
      else offer(p, near);
      const missed = near !== null && !chosen.has(near.facet) && near.distance < upper - tolerance;
      if (missed) chosen.add(near.facet);
      if ((!outside && !missed) || round === ROUNDS || upper <= best.depth + tolerance) {
        const binding = bindingOf(bound, list, near);
        return { upper, parts: () => halves(corners, binding).map((c) => cellOf(c, solid, facets)) };
      }
    }
  };

  /** Adds the plane that touches the hull where it is nearest to a point outside it, and looks at that place. */
  const touch = (gap: HullGap): void => {
    const normal: Vec3 = [-gap.toward[0], -gap.toward[1], -gap.toward[2]];
    touching.push({ normal, offset: dot3(normal, gap.onB) + hull.radius });
    const on = add3(gap.onB, scale3(normal, hull.radius));
    if (!body.spaces.some((space) => within(space, on))) return;
    if (allBeyond(body.boundary, on, best.depth)) offer(on, nearestFacet(body.boundary, on));
  };

  const open = bestFirst<Place>((place) => place.upper);
  const keep = (place: Place | null): void => {
    if (place === null) return;
    if (place.upper > best.depth + tolerance) open.push(place);
    else ceiling = Math.max(ceiling, place.upper);
  };
  const box = grown(boundsOf(hull.points), hull.radius);
  body.solids.forEach((solid, s) => {
    if (boundsGap(box, body.bounds[s]!) > 0) return;
    if (hullGap(solid.vertices, hull.points).distance > hull.radius) return;
    const room = common(box, body.bounds[s]!);
    const { upper, facets } = facetsFor([room.low, room.high], body.boundary);
    keep({
      upper,
      parts: () => {
        const near = facets();
        return tetrahedra(room).map((corners) => cellOf(corners, s, near));
      },
    });
  });
  for (let count = 0; ; count++) {
    const place = open.pop();
    if (place === undefined) break;
    if (place.upper <= best.depth + tolerance || count === MOST_PLACES) {
      ceiling = Math.max(ceiling, place.upper);
      break;
    }
    for (const part of place.parts()) keep(part);
  }
  return { ...best, depth: Math.max(best.depth, ceiling) };
};

/** The facet nearest where the bound is reached counts in full: its sag is what the bound gives away there. */
const bindingOf = (bound: SimplexBound, facets: readonly Facet[], near: NearestFacet | null): Binding => [
  ...bound.binding.map(({ index, share }) => ({ facet: facets[index]!, share })),
  ...(near === null ? [] : [{ facet: near.facet, share: 1 }]),
];

/** Whether a point lies inside planes, or on them to a millionth of a micrometre. */
export const within = (spaces: readonly HalfSpace[], p: Vec3): boolean =>
  spaces.every((h) => dot3(h.normal, p) <= h.offset + ON_HULL);

const ballAround = (points: readonly Vec3[]): { readonly centre: Vec3; readonly reach: number } => {
  const { low, high } = boundsOf(points);
  const centre: Vec3 = [(low[0] + high[0]) / 2, (low[1] + high[1]) / 2, (low[2] + high[2]) / 2];
  const reach = Math.max(
    ...points.map((p) => Math.hypot(p[0] - centre[0], p[1] - centre[1], p[2] - centre[2])),
  );
  return { centre, reach };
};

/** Corner values of the planes that part the cell; null when one of them shuts the whole cell out. */
const cutValues = (
  corners: Corners,
  spaces: readonly HalfSpace[],
  touching: readonly HalfSpace[],
): readonly (readonly number[])[] | null => {
  const out: (readonly number[])[] = [];
  const [p, q, r, t] = corners;
  for (const list of [spaces, touching])
    for (const { normal, offset } of list) {
      const a = dot3(normal, p) - offset;
      const b = dot3(normal, q) - offset;
      const c = dot3(normal, r) - offset;
      const d = dot3(normal, t) - offset;
      if (a > ON_HULL && b > ON_HULL && c > ON_HULL && d > ON_HULL) return null;
      if (a > AJAR || b > AJAR || c > AJAR || d > AJAR) out.push([a - AJAR, b - AJAR, c - AJAR, d - AJAR]);
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
const halves = (corners: Corners, binding: Binding): readonly [Corners, Corners] => {
  const ends = binding.map(({ facet }) => corners.map((p) => distanceToFacet(facet, p)));
  let cut = { a: 0, b: 1, middle: corners[0], sag: -1, length: -1 };
  for (let a = 0; a < 4; a++)
    for (let b = a + 1; b < 4; b++) {
      const [p, q] = [corners[a]!, corners[b]!];
      const middle: Vec3 = [(p[0] + q[0]) / 2, (p[1] + q[1]) / 2, (p[2] + q[2]) / 2];
      const length = Math.hypot(p[0] - q[0], p[1] - q[1], p[2] - q[2]);
      let sag = 0;
      binding.forEach(({ facet, share }, k) => {
        sag += share * ((ends[k]![a]! + ends[k]![b]!) / 2 - distanceToFacet(facet, middle));
      });
      if (sag < NO_SAG) sag = 0;
      if (sag > cut.sag || (sag === cut.sag && length > cut.length)) cut = { a, b, middle, sag, length };
    }
  const put = (at: number, k: 0 | 1 | 2 | 3): Vec3 => (k === at ? cut.middle : corners[k]);
  const swap = (at: number): Corners => [put(at, 0), put(at, 1), put(at, 2), put(at, 3)];
  return [swap(cut.b), swap(cut.a)];
};

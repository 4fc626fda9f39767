import {
  BRANCHES,
  bestFirst,
  type Deepest,
  type DepthBody,
  deepestPoint,
  distanceToFacet,
  type Facet,
  leastToFacet,
  nearestFacet,
  type TriangleSoup,
  within,
} from '../geometry/index.js';
import type { Vec3 } from '../numeric/index.js';
import { type DeepestTurn, sweptHull } from './deepest-turn.js';
import type { Rock } from './least-gap.js';
import { boxOfNode, cornersOf, mostlyTurn, type ScanBox } from './scan-box.js';
import { trianglesOf } from './scan-gap.js';
import { placedTriangle, type ScanPlace } from './scan-place.js';
import { NO_TURN, type Stretch, stretchesOf } from './scan-stretch.js';
import { leastToBox, type Wall } from './scan-wall.js';

export interface ScanDepth extends DeepestTurn {
  readonly triangle: number;
}

/** A node of the tree or one triangle through a stretch of the turn: nothing in it is deeper than `upper`. */
interface Part {
  readonly upper: number;
  readonly level: number;
  readonly index: number;
  readonly walls: readonly number[];
  readonly facets: readonly Facet[];
  readonly stretch: Stretch;
}

const TRIANGLE = -1;
/** Still: to a thousandth of a micrometre. While the engine rocks: with the fourth part below, to a tenth of a millimetre. */
const STILL = 1e-6;
const ROCKING = 0.08;
/** Past so many searches in single triangles the bound is given, which is on the deep side. */
const MOST_SEARCHES = 3000;
/** Boxes nearer to a solid than this may reach into it, mm. */
const TOUCHING = 1e-9;

/**
 * The point of a scan that comes deepest inside a body while the engine moves, whether or not the scan is closed:
 * branch and bound over boxes of triangles and stretches of the turn. A depth changes no faster than the point
 * moves, and a distance to one facet is convex, so that its values at the corners of a box bound it too.
 */
export const scanDepth = (
  made: DepthBody,
  walls: readonly Wall[],
  soup: TriangleSoup,
  place: ScanPlace,
  rock: Rock,
): ScanDepth => {
  const tree = soup.tree();
  const tolerance = rock.angle === 0 ? STILL : ROCKING;
  const fine = rock.angle === 0 ? STILL : ROCKING / 4;
  const stretches = stretchesOf(place, rock);
  const box: ScanBox = { x: 0, y: 0, z: 0, halfX: 0, halfY: 0, halfZ: 0 };
  const open = bestFirst<Part>((part) => part.upper);
  let best: ScanDepth = { depth: 0, at: [0, 0, 0], facet: null, angle: 0, triangle: 0 };
  let [ceiling, searches] = [0, 0];

  const reach = (found: Deepest, stretch: Stretch, triangle: number): void => {
    if (found.facet !== null && found.depth > best.depth) best = { ...found, angle: stretch.angle, triangle };
  };
  const keep = (part: Part): void => {
    if (part.upper > best.depth + tolerance) open.push(part);
    else ceiling = Math.max(ceiling, part.upper);
  };

  const offer = (
    level: number,
    index: number,
    parent: Pick<Part, 'walls' | 'facets' | 'upper'>,
    stretch: Stretch,
  ): void => {
    boxOfNode(box, tree.levels[level]!, index, stretch, rock.height);
    const near = parent.walls.filter((w) => leastToBox(walls[w]!, box, TOUCHING) < TOUCHING);
    if (near.length === 0) return;
    const centre: Vec3 = [box.x, box.y, box.z];
    const radius = Math.hypot(box.halfX, box.halfY, box.halfZ);
    const nearest = nearestFacet(parent.facets, centre)!;
    const { distance, facet } = nearest;
    const facets = parent.facets.filter((f) => leastToFacet(f, centre) <= distance + 2 * radius);
    const upper = Math.min(parent.upper, distance + radius, farthestFrom(facet, cornersOf(box)));
    keep({ upper, level, index, walls: near, facets, stretch });
  };

  /** The deepest point of one triangle, or a bound on it that is as good. */
  const look = (triangle: number, part: Part, stretch: Stretch): void => {
    const points = placedTriangle(stretch.place, soup.corners, triangle);
    const hull = { points: sweptHull({ points, radius: 0 }, rock.height, 0, stretch.half).points, radius: 0 };
    const { facet } = nearestFacet(part.facets, points[0]!)!;
    const rough = Math.min(part.upper, farthestFrom(facet, hull.points));
    for (const at of points) {
      if (rough <= best.depth || !part.walls.some((w) => within(made.spaces[w]!, at))) continue;
      const near = nearestFacet(part.facets, at)!;
      reach({ depth: near.distance, at, facet: near.facet }, stretch, triangle);
    }
    if (rough <= best.depth + tolerance || searches > MOST_SEARCHES) {
      ceiling = Math.max(ceiling, rough);
      return;
    }
    searches++;
    const here = deepestPoint(made, { points, radius: 0 }, best.depth, fine);
    reach(here, stretch, triangle);
    if (stretch.half <= NO_TURN) {
      ceiling = Math.max(ceiling, here.depth);
      return;
    }
    const { depth: upper } = deepestPoint(made, hull, best.depth, fine);
    keep({ ...part, upper: Math.min(rough, upper), level: TRIANGLE, index: triangle, stretch });
  };

  const whole = { walls: walls.map((_, i) => i), facets: made.boundary, upper: Number.POSITIVE_INFINITY };
  for (const stretch of stretches.first) offer(tree.levels.length - 1, 0, whole, stretch);
  for (let part = open.pop(); part !== undefined; part = open.pop()) {
    const { upper, level, index, stretch } = part;
    if (upper <= best.depth + tolerance) {
      ceiling = Math.max(ceiling, upper);
      break;
    }
    if (level === TRIANGLE) {
      for (const half of stretches.halvesOf(stretch)) look(index, part, half);
      continue;
    }
    boxOfNode(box, tree.levels[level]!, index, stretch, rock.height);
    if (mostlyTurn(box, stretch, rock.height)) {
      for (const half of stretches.halvesOf(stretch)) offer(level, index, part, half);
    } else if (level > 0) {
      const end = Math.min((index + 1) * BRANCHES, tree.levels[level - 1]!.count);
      for (let i = index * BRANCHES; i < end; i++) offer(level - 1, i, part, stretch);
    } else {
      for (const triangle of trianglesOf(tree, index)) look(triangle, part, stretch);
    }
  }
  return { ...best, depth: Math.max(best.depth, ceiling) };
};

const farthestFrom = (facet: Facet, points: readonly Vec3[]): number => {
  let most = 0;
  for (const p of points) most = Math.max(most, distanceToFacet(facet, p));
  return most;
};

import {
  BRANCHES,
  bestFirst,
  hullGap,
  type SoupTree,
  swingBy,
  type TriangleSoup,
} from '../geometry/index.js';
import type { Vec3 } from '../numeric/index.js';
import { partedOver, type Rock } from './least-gap.js';
import type { GapSearch } from './obstacle-form.js';
import { boxOfNode, boxOfTriangle, mostlyTurn, type ScanBox } from './scan-box.js';
import { placedTriangle, type ScanPlace } from './scan-place.js';
import { NO_TURN, type Stretch, stretchesOf } from './scan-stretch.js';
import { leastToBox, overKnownPlane, rememberPlane, type Wall } from './scan-wall.js';

/** Where a scan comes nearest to a body. */
export interface ScanGap {
  /** mm, never more than the true least distance; 0 when they meet. */
  readonly distance: number;
  readonly meets: boolean;
  /** Which solid of the body, and which triangle of the scan; null when nothing came near enough to be looked at. */
  readonly nearest: ScanMeeting | null;
}

export interface ScanMeeting {
  readonly solid: number;
  readonly triangle: number;
  readonly onBody: Vec3;
  readonly onScan: Vec3;
  readonly toward: Vec3;
  readonly angle: number;
}

/** A node of the tree, or one triangle against one solid, through a stretch of the turn. */
interface Part {
  readonly lower: number;
  readonly level: number;
  readonly index: number;
  /** Solids that may be nearest to something in it. */
  readonly walls: readonly number[];
  readonly stretch: Stretch;
}

/** Level of a part that is one triangle. */
const TRIANGLE = -1;
/** Past this many looks the bound reached so far is given, which is on the near side. */
const MOST_LOOKS = 400_000;

/**
 * Least distance from a body to a scan while the engine moves: branch and bound over boxes of triangles, the
 * solids of the body and stretches of the turn, all at once. A box is bounded by its gap to each solid along
 * the axes and over the solid's planes, less what the turn can carry it; a triangle by the planes that part it
 * from the solid at the middle of the stretch and the exact arcs of its corners.
 */
export const scanGap = (
  walls: readonly Wall[],
  soup: TriangleSoup,
  place: ScanPlace,
  rock: Rock,
  { enough, slack }: GapSearch,
): ScanGap => {
  const tree = soup.tree();
  const stretches = stretchesOf(place, rock);
  const box: ScanBox = { x: 0, y: 0, z: 0, halfX: 0, halfY: 0, halfZ: 0 };
  const open = bestFirst<Part>((part) => -part.lower);
  const best = { distance: Number.POSITIVE_INFINITY, nearest: null as ScanMeeting | null };
  let passed = Number.POSITIVE_INFINITY;
  const goal = (): number => Math.min(enough, best.distance - slack);

  /** Puts a part by, unless every solid is farther from it than is of interest. */
  const offer = (
    level: number,
    index: number,
    among: readonly number[],
    stretch: Stretch,
    bound: number,
  ): void => {
    boxOfNode(box, tree.levels[level]!, index, stretch, rock.height);
    const limit = goal();
    const near: number[] = [];
    let lower = Number.POSITIVE_INFINITY;
    for (const w of among) {
      const least = leastToBox(walls[w]!, box, limit);
      if (least < limit) near.push(w);
      if (least < lower) lower = least;
    }
    if (near.length === 0) passed = Math.min(passed, Math.max(lower, bound));
    else open.push({ lower: Math.max(lower, bound), level, index, walls: near, stretch });
  };

  /** One triangle against some solids; true when they meet. */
  const look = (triangle: number, among: readonly number[], stretch: Stretch, bound: number): boolean => {
    boxOfTriangle(box, soup.corners, triangle, stretch, rock.height);
    // Most triangles are told to be too far by their box alone.
    let points: readonly Vec3[] | null = null;
    for (const w of among) {
      const wall = walls[w]!;
      const limit = goal();
      const apart = leastToBox(wall, box, limit);
      if (apart >= limit) {
        passed = Math.min(passed, apart);
        continue;
      }
      points ??= placedTriangle(stretch.place, soup.corners, triangle);
      const swing = swingBy(stretch.half);
      const quick = Math.max(apart, overKnownPlane(wall, points, rock.height, swing));
      if (quick >= limit) {
        passed = Math.min(passed, quick);
        continue;
      }
      const gap = hullGap(wall.vertices, points);
      if (gap.distance < best.distance) {
        best.distance = gap.distance;
        const { onA: onBody, onB: onScan, toward } = gap;
        best.nearest = { solid: w, triangle, onBody, onScan, toward, angle: stretch.angle };
      }
      if (gap.distance === 0) return true;
      rememberPlane(wall, gap.toward);
      const parted =
        stretch.half === 0 ? gap.distance : partedOver(wall.vertices, points, gap.toward, rock.height, swing);
      const lower = Math.max(bound, quick, parted);
      if (lower >= goal() || stretch.half <= NO_TURN) passed = Math.min(passed, lower);
      else open.push({ lower, level: TRIANGLE, index: triangle, walls: [w], stretch });
    }
    return false;
  };

  const top = tree.levels.length - 1;
  const every = walls.map((_, i) => i);
  for (const stretch of stretches.first) offer(top, 0, every, stretch, 0);
  let looked = 0;
  for (let part = open.pop(); part !== undefined; part = open.pop()) {
    if (part.lower >= goal() || ++looked > MOST_LOOKS) {
      passed = Math.min(passed, part.lower);
      break;
    }
    const { level, index, stretch, lower } = part;
    if (level === TRIANGLE) {
      for (const half of stretches.halvesOf(stretch))
        if (look(index, part.walls, half, lower)) return { distance: 0, meets: true, nearest: best.nearest };
      continue;
    }
    boxOfNode(box, tree.levels[level]!, index, stretch, rock.height);
    if (mostlyTurn(box, stretch, rock.height)) {
      for (const half of stretches.halvesOf(stretch)) offer(level, index, part.walls, half, lower);
    } else if (level > 0) {
      const end = Math.min((index + 1) * BRANCHES, tree.levels[level - 1]!.count);
      for (let i = index * BRANCHES; i < end; i++) offer(level - 1, i, part.walls, stretch, lower);
    } else if (trianglesOf(tree, index).some((t) => look(t, part.walls, stretch, lower))) {
      return { distance: 0, meets: true, nearest: best.nearest };
    }
  }
  // What was passed over may be nearer by the slack; the lesser is given.
  return { distance: Math.max(0, Math.min(best.distance, passed)), meets: false, nearest: best.nearest };
};

/** The triangles under a node of the lowest level. */
export const trianglesOf = ({ order }: SoupTree, node: number): readonly number[] =>
  Array.from(order.subarray(node * BRANCHES, (node + 1) * BRANCHES));

import {
  bestFirst,
  boundsGap,
  boundsOf,
  farthest,
  hullGap,
  largestSwing,
  type RoundHull,
  type Swing,
  swingBy,
  turnAboutX,
} from '../geometry/index.js';
import { dot3, type Vec3 } from '../numeric/index.js';
import type { Body } from './body.js';
import type { GapSearch } from './obstacle-form.js';

/** How the engine turns: about the crank's axis, a line along x at this height above the rail, ± the angle. */
export interface Rock {
  readonly height: number;
  readonly angle: number;
}

export const NO_ROCK: Rock = Object.freeze({ height: 0, angle: 0 });

/** Where a hull comes nearest to a body. */
export interface LeastGap {
  /** mm, never more than the true least distance; 0 when they meet. */
  readonly distance: number;
  readonly meets: boolean;
  readonly solid: number;
  readonly onBody: Vec3;
  readonly toward: Vec3;
  /** Turn of the engine, positive carrying its left side up. */
  readonly angle: number;
}

interface Part {
  readonly solid: number;
  readonly middle: number;
  readonly half: number;
  readonly lower: number;
}

/** The search ends when nothing can be nearer than what was found by more than this, mm. */
const EXACT: GapSearch = Object.freeze({ enough: Number.POSITIVE_INFINITY, slack: 1e-5 });
/** Past this many looks the bound reached so far is given, which is on the near side. */
const MOST_LOOKS = 5000;
/** Turns smaller than this move nothing, radians. */
const NO_TURN = 1e-9;

/**
 * Least distance from a body to a hull while the body turns through ± the rock angle: branch and bound over
 * solids and stretches of the turn. On a stretch the planes that part the two at its middle are held still, or
 * turned with the hull, and each corner's arc gives its exact nearest approach to them; both are lower bounds,
 * and the better one counts.
 *
 * The hull is turned the other way instead of the body.
 */
export const leastGap = (
  body: Body,
  hull: RoundHull,
  rock: Rock,
  { enough, slack }: GapSearch = EXACT,
): LeastGap => {
  const whole = swingBy(rock.angle);
  const box = boundsOf(
    rock.angle === 0 ? hull.points : hull.points.flatMap((p) => arcCorners(p, rock.height, whole)),
  );
  const open = bestFirst<Part>((part) => -part.lower);
  body.bounds.forEach((b, solid) => {
    open.push({ solid, middle: 0, half: rock.angle, lower: boundsGap(b, box) - hull.radius });
  });
  let best: LeastGap | null = null;
  let [looked, passed] = [0, Number.POSITIVE_INFINITY];
  /** Nothing that is known to be no nearer than this needs a look. */
  const goal = (): number => Math.min(enough, best === null ? enough : best.distance - slack);
  for (let part = open.pop(); part !== undefined; part = open.pop()) {
    if (part.lower >= goal() || (best !== null && looked >= MOST_LOOKS)) {
      passed = Math.min(passed, part.lower);
      break;
    }
    looked++;
    const { solid, middle, half } = part;
    const vertices = body.solids[solid]!.vertices;
    const turned =
      rock.angle === 0 ? hull.points : hull.points.map((p) => turnAboutX(p, rock.height, -middle));
    const swing = swingBy(half);
    if (best !== null) {
      // Planes that part the nearest solid so far often part its neighbours too, without a search of their own.
      const aside = partedOver(vertices, turned, best.toward, rock.height, swing) - hull.radius;
      if (aside >= goal()) {
        passed = Math.min(passed, aside);
        continue;
      }
    }
    const gap = hullGap(vertices, turned);
    const distance = gap.distance - hull.radius;
    if (best === null || distance < best.distance) {
      best = { distance, meets: false, solid, onBody: gap.onA, toward: gap.toward, angle: middle };
    }
    if (distance <= 0) return { ...best, distance: 0, meets: true };
    if (half === 0) {
      // Nothing turns: what was found is the bound itself.
      passed = Math.min(passed, distance);
      continue;
    }
    const lower = Math.max(
      part.lower,
      partedOver(vertices, turned, gap.toward, rock.height, swing) - hull.radius,
    );
    if (lower >= goal() || half <= NO_TURN) {
      passed = Math.min(passed, lower);
      continue;
    }
    for (const s of [-1, 1]) {
      open.push({ solid, middle: middle + (s * half) / 2, half: half / 2, lower });
      // The least is mostly at an end of the turn; knowing it spares halving towards it.
      if (half === rock.angle) open.push({ solid, middle: s * half, half: 0, lower });
    }
  }
  // Nothing came near enough to be looked at.
  const { toward, onBody } = { toward: [0, 0, 0] as Vec3, onBody: body.solids[0]!.vertices[0]! };
  const far = { distance: passed, meets: false, solid: 0, onBody, toward, angle: 0 };
  // What was passed over may be nearer by the slack; the lesser is given.
  return best === null ? far : { ...best, distance: Math.max(0, Math.min(best.distance, passed)) };
};

/** Corners of the box around a point's arc. */
const arcCorners = (p: Vec3, height: number, swing: Swing): readonly [Vec3, Vec3] => {
  const [y, z] = [p[1], p[2] - height];
  return [
    [p[0], -largestSwing(-y, z, swing), height - largestSwing(-z, -y, swing)],
    [p[0], largestSwing(y, -z, swing), height + largestSwing(z, y, swing)],
  ];
};

/** The better of the two lower bounds on the gap along `toward` while the hull turns by up to ± half. */
export const partedOver = (
  vertices: readonly Vec3[],
  hull: readonly Vec3[],
  toward: Vec3,
  height: number,
  swing: Swing,
): number => {
  const back: Vec3 = [-toward[0], -toward[1], -toward[2]];
  if (swing.sin === 0) return dot3(toward, farthest(hull, back)) - dot3(toward, farthest(vertices, toward));
  const still = -swingOf(hull, back, height, swing) - dot3(toward, farthest(vertices, toward));
  const withHull = dot3(toward, farthest(hull, back)) - swingOf(vertices, toward, height, swing);
  return Math.max(still, withHull);
};

/** How far along a direction any of the points comes through a swing. */
export const swingOf = (points: readonly Vec3[], along: Vec3, height: number, swing: Swing): number => {
  let most = Number.NEGATIVE_INFINITY;
  for (const p of points) {
    const [y, z] = [p[1], p[2] - height];
    const fixed = along[0] * p[0] + along[2] * height;
    most = Math.max(
      most,
      fixed + largestSwing(along[1] * y + along[2] * z, along[2] * y - along[1] * z, swing),
    );
  }
  return most;
};

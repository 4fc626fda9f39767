import {
  bestFirst,
  type Deepest,
  deepestMiddle,
  deepestPoint,
  type RoundHull,
  turnAboutX,
} from '../geometry/index.js';
import type { Vec3 } from '../numeric/index.js';
import type { Body } from './body.js';
import type { Rock } from './least-gap.js';

export interface DeepestTurn extends Deepest {
  readonly angle: number;
}

interface Stretch {
  readonly middle: number;
  readonly half: number;
  readonly upper: number;
}

/** Still: to a thousandth of a micrometre. While the engine rocks: to a tenth of a millimetre. */
const STILL = 1e-6;
const ROCKING = 0.08;
const MOST_STRETCHES = 8;

/**
 * How deep a hull comes inside a body while the body turns through ± the rock angle. On a stretch of the turn
 * the hull of all its places holds every one of them, so its depth is an upper bound; stretches are halved
 * until the bound is within 0.1 mm of a depth that is reached, or eight have been looked at. What is given is
 * the bound, which is never less than the true depth.
 */
export const deepestTurn = (body: Body, hull: RoundHull, rock: Rock): DeepestTurn => {
  const made = body.depth();
  if (rock.angle === 0) {
    return { ...deepestMiddle(made, hull, deepestPoint(made, hull, 0, STILL)), angle: 0 };
  }
  const open = bestFirst<Stretch>((s) => s.upper);
  let reached: DeepestTurn = { depth: 0, at: hull.points[0]!, facet: null, angle: 0 };
  const reach = (angle: number): void => {
    const here = deepestPoint(made, turned(hull, rock.height, -angle), reached.depth, ROCKING / 4);
    if (here.facet !== null) reached = { ...here, angle };
  };
  const look = (middle: number, half: number): void => {
    reach(middle);
    const swept = sweptHull(hull, rock.height, -middle, half);
    open.push({ middle, half, upper: deepestPoint(made, swept, reached.depth, ROCKING / 4).depth });
  };
  // The most is usually reached at an end of the turn; knowing it first spares many stretches.
  for (const end of [-rock.angle, rock.angle]) reach(end);
  look(0, rock.angle);
  for (let count = 0; ; count++) {
    const top = open.pop();
    if (top === undefined) return reached;
    if (top.upper <= reached.depth + ROCKING || count === MOST_STRETCHES) {
      return { ...reached, depth: Math.max(reached.depth, top.upper) };
    }
    for (const s of [-1, 1]) look(top.middle + (s * top.half) / 2, top.half / 2);
  }
};

const turned = (hull: RoundHull, height: number, angle: number): RoundHull => ({
  points: hull.points.map((p) => turnAboutX(p, height, angle)),
  radius: hull.radius,
});

/** A hull that holds the given one at every turn of the stretch: each arc inside its two tangents. */
export const sweptHull = (hull: RoundHull, height: number, middle: number, half: number): RoundHull => ({
  points: hull.points.flatMap((p): readonly Vec3[] => {
    const centre: Vec3 = [p[0], 0, height];
    const m = turnAboutX(p, height, middle);
    const k = 1 / Math.cos(half);
    const tip: Vec3 = [p[0], m[1] * k, centre[2] + (m[2] - height) * k];
    return [turnAboutX(p, height, middle - half), turnAboutX(p, height, middle + half), tip];
  }),
  radius: hull.radius,
});

import type { Scan } from '../design/index.js';
import { PanError } from '../errors/index.js';
import type { TriangleSoup } from '../geometry/index.js';
import { type Body, faceNameAt } from './body.js';
import type { Approach, GapSearch, Motion, ObstacleForm } from './obstacle-form.js';
import { scanDepth } from './scan-depth.js';
import { scanGap } from './scan-gap.js';
import { nearScan } from './scan-near.js';
import { inScan, placeOfScan, turnedPlace } from './scan-place.js';
import { type Wall, wallsOf } from './scan-wall.js';
import { surfaceName } from './surface-name.js';

/** Still, distances are as exact as the sums behind them; while the engine moves, to a hundredth of a micrometre. */
const STILL: GapSearch = Object.freeze({ enough: Number.POSITIVE_INFINITY, slack: 1e-10 });
const MOVING: GapSearch = Object.freeze({ enough: Number.POSITIVE_INFINITY, slack: 1e-5 });

/** A scan of fewer triangles has its tree at once. */
const MANY = 20_000;

/**
 * A measured surface as an obstacle. The first question to it at rest is answered by one pass over its triangles,
 * and only the second plants a tree.
 *
 * @throws PanError `file-read` when the scan's triangles have not been handed in (`withScans`)
 */
export const scanForm = (scan: Scan): ObstacleForm => {
  // A search for room asks thousands of times about the same few bodies.
  const known = new WeakMap<Body, readonly Wall[]>();
  const wallsFor = (body: Body): readonly Wall[] => {
    const walls = known.get(body) ?? wallsOf(body);
    known.set(body, walls);
    return walls;
  };
  let asked = false;
  return {
    approach: (body, motion) => {
      const once = !asked && (scan.soup?.count ?? 0) >= MANY && isStill(motion);
      asked = true;
      return scanApproach(scan, body, wallsFor(body), motion, once);
    },
    gap: (body, motion, search) =>
      scanGap(wallsFor(body), soupOf(scan), placeOfScan(scan, motion), motion.rock, search).distance,
  };
};

const soupOf = ({ soup, file }: Scan): TriangleSoup => {
  if (soup !== null) return soup;
  throw new PanError({
    code: 'file-read',
    path: [],
    message: `The scan ${file} has not been read.`,
    advice: 'Hand its triangles in before asking for distances to it.',
  });
};

const isStill = ({ rock, moves }: Motion): boolean => rock.angle === 0 && moves === null;

const scanApproach = (
  scan: Scan,
  body: Body,
  walls: readonly Wall[],
  motion: Motion,
  once: boolean,
): Approach => {
  const soup = soupOf(scan);
  const place = placeOfScan(scan, motion);
  const still = isStill(motion);
  const among = once ? nearScan(walls, soup, place) : soup;
  const { distance, meets, nearest } = scanGap(walls, among, place, motion.rock, still ? STILL : MOVING);
  if (nearest === null) throw new Error('a scan without triangles or a body without solids');
  const solid = body.solids[nearest.solid]!;
  const onObstacle = (p: readonly [number, number, number], angle: number) =>
    still ? inScan(turnedPlace(place, motion.rock.height, -angle), p) : null;
  if (!meets) {
    const { onBody, onScan, toward, angle } = nearest;
    const feature = faceNameAt(solid, onBody, toward);
    return { distance, at: onBody, feature, angle, onObstacle: onObstacle(onScan, angle) };
  }
  const deep = scanDepth(body.depth(), walls, soup, place, motion.rock);
  const feature = surfaceName(body, deep) ?? solid.name;
  const at = deep.facet === null ? nearest.onBody : deep.at;
  return { distance: -deep.depth, at, feature, angle: deep.angle, onObstacle: onObstacle(at, deep.angle) };
};

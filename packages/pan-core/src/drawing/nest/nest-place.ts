import type { Vec2 } from '../../numeric/index.js';
import type { NoFit } from './nest-fit.js';

/** A no-fit polygon where its standing part lies. */
export interface Barrier {
  readonly fit: NoFit;
  readonly at: Vec2;
}

/** Nearer to an edge than this is on it: the clipping rounds to whole units. */
const ON = 2.5;

/**
 * The leftmost free place for a shape's origin, the lowest of those, or null.
 *
 * Free places are bounded by edges of the no-fit polygons and of the room, so one of their corners is the
 * leftmost: a corner of a polygon or of the room, or a crossing of two edges.
 *
 * @param room how far the origin may go along x and y from 0, 0
 * @param limit places at this x or beyond are of no use
 */
export const leftmostPlace = (
  barriers: readonly Barrier[],
  room: Vec2,
  limit = Number.POSITIVE_INFINITY,
): Vec2 | null => {
  if (room[0] < 0 || room[1] < 0) return null;
  let best: Vec2 | null = null;
  // Places follow each other closely, so what stood in the way of one often does of the next.
  let blocker = 0;
  const isFreePlace = (px: number, py: number): boolean => {
    const before = barriers[blocker];
    if (before !== undefined && !isFree(before, px, py)) return false;
    for (let i = 0; i < barriers.length; i++) {
      if (i === blocker || isFree(barriers[i]!, px, py)) continue;
      blocker = i;
      return false;
    }
    return true;
  };
  const tryPlace = (x: number, y: number): void => {
    if (x < -ON || y < -ON || x > room[0] + ON || y > room[1] + ON || x >= limit) return;
    const [px, py] = [Math.min(Math.max(x, 0), room[0]), Math.min(Math.max(y, 0), room[1])];
    if (best !== null && (px > best[0] || (px === best[0] && py >= best[1]))) return;
    if (isFreePlace(px, py)) best = [px, py];
  };
  tryPlace(0, 0);
  tryPlace(0, room[1]);
  const edges = edgesOf(barriers, room);
  for (const { ax, ay, bx, by } of edges) {
    tryPlace(ax, ay);
    if (ax > 0 !== bx > 0) tryPlace(0, ay + ((by - ay) * -ax) / (bx - ax));
    if (ay > 0 !== by > 0) tryPlace(ax + ((bx - ax) * -ay) / (by - ay), 0);
    if (ay > room[1] !== by > room[1]) tryPlace(ax + ((bx - ax) * (room[1] - ay)) / (by - ay), room[1]);
  }
  crossings(edges, tryPlace, () => best?.[0] ?? limit);
  return best;
};

interface Edge {
  readonly ax: number;
  readonly ay: number;
  readonly bx: number;
  readonly by: number;
  readonly left: number;
  readonly right: number;
  readonly low: number;
  readonly high: number;
  readonly of: number;
}

const edgesOf = (barriers: readonly Barrier[], room: Vec2): readonly Edge[] => {
  const edges: Edge[] = [];
  barriers.forEach(({ fit, at }, of) => {
    for (const ring of fit.rings)
      for (let i = 0, j = ring.length - 2; i < ring.length; j = i, i += 2) {
        const [ax, ay] = [ring[j]! + at[0], ring[j + 1]! + at[1]];
        const [bx, by] = [ring[i]! + at[0], ring[i + 1]! + at[1]];
        const [left, right] = ax < bx ? [ax, bx] : [bx, ax];
        if (right < -ON || left > room[0] + ON) continue;
        const [low, high] = ay < by ? [ay, by] : [by, ay];
        if (high < -ON || low > room[1] + ON) continue;
        edges.push({ ax, ay, bx, by, left, right, low, high, of });
      }
  });
  return edges.sort((a, b) => a.left - b.left);
};

/** Visits crossings of edges of different polygons, edges from the left, none that lie beyond `limit()`. */
const crossings = (
  edges: readonly Edge[],
  visit: (x: number, y: number) => void,
  limit: () => number,
): void => {
  for (let i = 0; i < edges.length; i++) {
    const e = edges[i]!;
    if (e.left > limit()) return;
    for (let k = i + 1; k < edges.length; k++) {
      const f = edges[k]!;
      if (f.left > e.right || f.left > limit()) break;
      if (e.of === f.of || f.low > e.high || f.high < e.low) continue;
      const [ex, ey, fx, fy] = [e.bx - e.ax, e.by - e.ay, f.bx - f.ax, f.by - f.ay];
      const det = ex * fy - ey * fx;
      if (det === 0) continue;
      const [dx, dy] = [f.ax - e.ax, f.ay - e.ay];
      const t = (dx * fy - dy * fx) / det;
      const u = (dx * ey - dy * ex) / det;
      if (t >= 0 && t <= 1 && u >= 0 && u <= 1) visit(e.ax + t * ex, e.ay + t * ey);
    }
  }
};

/** Outside a polygon by the even–odd rule, or on its edge. */
const isFree = ({ fit, at }: Barrier, x: number, y: number): boolean => {
  const [px, py] = [x - at[0], y - at[1]];
  const { box } = fit;
  if (px <= box[0]! + ON || px >= box[2]! - ON || py <= box[1]! + ON || py >= box[3]! - ON) return true;
  let odd = false;
  for (const ring of fit.rings)
    for (let i = 0, j = ring.length - 2; i < ring.length; j = i, i += 2) {
      const [ax, ay, bx, by] = [ring[i]!, ring[i + 1]!, ring[j]!, ring[j + 1]!];
      if (nearEdge(px, py, ax, ay, bx, by)) return true;
      if (ay > py !== by > py && px < ax + ((py - ay) * (bx - ax)) / (by - ay)) odd = !odd;
    }
  return !odd;
};

const nearEdge = (x: number, y: number, ax: number, ay: number, bx: number, by: number): boolean => {
  if (x < Math.min(ax, bx) - ON || x > Math.max(ax, bx) + ON) return false;
  if (y < Math.min(ay, by) - ON || y > Math.max(ay, by) + ON) return false;
  const [ux, uy] = [bx - ax, by - ay];
  const off = Math.abs((x - ax) * uy - (y - ay) * ux);
  return off <= ON * Math.hypot(ux, uy);
};

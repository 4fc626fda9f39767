import type { Design } from '../design/index.js';
import { PanError, type Problem } from '../errors/index.js';
import type { Path, Segment } from '../geometry/index.js';
import type { Vec2 } from '../numeric/index.js';

/** A corner of the floor line seen from the side, as the sheet makes it. */
export interface Corner {
  /** [x, z] of the sharp corner of the inside faces. */
  readonly at: Vec2;
  /** Index into the design's `floor`. */
  readonly index: number;
  /** Radians turned, walking front to rear with the oil above: positive where the oil is inside the bend. */
  readonly turn: number;
  readonly folded: boolean;
  /** Radius of the inside (oil) face: R where the oil is inside the bend, R + T where it is outside. */
  readonly rho: number;
  /** Sharp corner to tangent point: tan(|turn|/2)·rho, mm. */
  readonly setback: number;
}

/** The pan's inside face along its centre plane, in [x, z], from the rail at the front to the rail at the rear. */
export interface Profile {
  /** Both rail ends and every floor point. */
  readonly sharp: readonly Vec2[];
  readonly corners: readonly Corner[];
  /** Straight pieces and true arcs of the formed sheet, front to rear. */
  readonly path: Path;
}

const STRAIGHT = 1e-12;

/**
 * The inside face of the belly from the rail down, along and up again, with every folded corner as its arc.
 *
 * @throws PanError `shape-floor` where the floor rises above the rail or repeats a point, `shape-fold`
 *   where two bends need more length than the flat between them has.
 */
export const floorProfile = (design: Design): Profile => {
  const { floor, sheet, joints } = design.pan;
  refuseNoLength(floor);
  const first = floor[0] as Vec2;
  const last = floor[floor.length - 1] as Vec2;
  const sharp: Vec2[] = [[first[0], 0], ...floor.map(([x, down]): Vec2 => [x, -down]), [last[0], 0]];
  const corners = floor.map((_, index) =>
    cornerAt(sharp, index, joints.welded.includes(index), sheet.bendRadius, sheet.thickness),
  );
  refuseOverlaps(sharp, corners);
  return { sharp, corners, path: formedPath(sharp, corners) };
};

/** Every piece of the line needs a length, or it has no direction; only an end wall may have none, at the rail. */
const refuseNoLength = (floor: Design['pan']['floor']): void => {
  const problems = floor.flatMap(([x, down], index): readonly Problem[] => {
    const path = ['pan', 'floor_inside', index];
    const before = floor[index - 1];
    if (!(down >= 0)) {
      return [
        {
          code: 'shape-floor',
          path,
          message: `Floor point ${index} at x = ${x} is ${down} mm down: it must not lie above the rail.`,
          value: down,
          limit: 0,
          unit: 'mm',
          advice: 'Give its depth below the rail, positive.',
        },
      ];
    }
    if (before === undefined || before[0] !== x || before[1] !== down) return [];
    const message = `Floor point ${index} at x = ${x} is the same as the one before it.`;
    return [{ code: 'shape-floor', path, message, advice: 'Leave one of them out.' }];
  });
  if (problems.length > 0) throw new PanError(problems);
};

const direction = (a: Vec2, b: Vec2): Vec2 => {
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
  return [(b[0] - a[0]) / length, (b[1] - a[1]) / length];
};

const samePoint = (a: Vec2, b: Vec2): boolean => a[0] === b[0] && a[1] === b[1];

const cornerAt = (
  sharp: readonly Vec2[],
  index: number,
  welded: boolean,
  radius: number,
  thickness: number,
): Corner => {
  const at = sharp[index + 1] as Vec2;
  const [before, after] = [sharp[index] as Vec2, sharp[index + 2] as Vec2];
  // A floor that runs out at the rail has no end wall there, and so no corner.
  if (samePoint(before, at) || samePoint(at, after)) {
    return { at, index, turn: 0, folded: false, rho: 0, setback: 0 };
  }
  const [u, v] = [direction(before, at), direction(at, after)];
  // Walking rearward (−x) with the oil above means walking with the oil on the right hand in the [x, z]
  // plane, so a clockwise turn has the oil inside the bend.
  const turn = -Math.atan2(u[0] * v[1] - u[1] * v[0], u[0] * v[0] + u[1] * v[1]);
  const folded = !welded && Math.abs(turn) > STRAIGHT;
  const rho = folded ? (turn > 0 ? radius : radius + thickness) : 0;
  return { at, index, turn, folded, rho, setback: Math.tan(Math.abs(turn) / 2) * rho };
};

const refuseOverlaps = (sharp: readonly Vec2[], corners: readonly Corner[]): void => {
  const problems: Problem[] = [];
  for (let i = 0; i + 1 < sharp.length; i++) {
    const a = sharp[i] as Vec2;
    const b = sharp[i + 1] as Vec2;
    const have = Math.hypot(b[0] - a[0], b[1] - a[1]);
    const need = (corners[i - 1]?.setback ?? 0) + (corners[i]?.setback ?? 0);
    if (need > have) {
      problems.push({
        code: 'shape-fold',
        path: ['pan', 'floor_inside', Math.min(i, corners.length - 1)],
        message: `The bends at both ends of the floor piece from x = ${a[0]} to x = ${b[0]} need ${need.toFixed(1)} mm and it is ${have.toFixed(1)} mm long.`,
        value: have,
        limit: need,
        unit: 'mm',
        advice: 'Lengthen the piece, use a smaller bend radius, or weld the corner (pan.joints.welded).',
      });
    }
  }
  if (problems.length > 0) throw new PanError(problems);
};

const formedPath = (sharp: readonly Vec2[], corners: readonly Corner[]): Path => {
  const path: Segment[] = [];
  let at = sharp[0] as Vec2;
  const lineTo = (to: Vec2): void => {
    if (!samePoint(at, to)) path.push({ kind: 'line', from: at, to });
    at = to;
  };
  corners.forEach((corner, i) => {
    if (corner.rho === 0) {
      lineTo(corner.at);
      return;
    }
    const u = direction(sharp[i] as Vec2, corner.at);
    const v = direction(corner.at, sharp[i + 2] as Vec2);
    const from: Vec2 = [corner.at[0] - u[0] * corner.setback, corner.at[1] - u[1] * corner.setback];
    const to: Vec2 = [corner.at[0] + v[0] * corner.setback, corner.at[1] + v[1] * corner.setback];
    // The centre lies on the inside of the bend: to the right of the walk for an oil-inside bend.
    const side = corner.turn > 0 ? 1 : -1;
    const centre: Vec2 = [from[0] + side * u[1] * corner.rho, from[1] - side * u[0] * corner.rho];
    lineTo(from);
    path.push({ kind: 'arc', from, to, centre, radius: corner.rho, sweep: -corner.turn });
    at = to;
  });
  lineTo(sharp[sharp.length - 1] as Vec2);
  return path;
};

import { dot2, left2, subtract2, unit2 } from '../geometry/index.js';
import type { Vec2, Vec3 } from '../numeric/index.js';
import practice from './brake-practice.json' with { type: 'json' };
import type { Hinge, HingedPart } from './fold-hinge.js';

/** Shares of the stroke at which the sheet is looked at. */
export const STROKE = [0.25, 0.5, 0.75, 1];

interface Turn {
  readonly hinge: Hinge;
  /** Turned about the hinge's line, the face's own side rising, radians; negative sinks. */
  readonly angle: number;
  /** 1 where what turns lies at the hinge's left hand, −1 at its right. */
  readonly side: 1 | -1;
}

/**
 * How near sheet already folded comes to the middle plane of a punch that stands over a hinge while that is bent:
 * nearly as long as the hinge, and as high as any sheet reaches. Both legs rise from the hinge by half the turn.
 * Measured from the plane towards the leg's own side, negative beyond it; infinite where nothing comes over it.
 */
export const hingeRoom = ({ faces, hinges }: HingedPart, own: number, done: ReadonlySet<number>): number => {
  const hinge = hinges[own]!;
  const { direction, angle } = hinge.folds[0]!;
  const least = STROKE.map((share) => {
    const start = (angle * share) / 2;
    return Math.min(
      ...([-1, 1] as const).map((side) => {
        const first: Turn = { hinge, angle: start, side };
        const root = side === 1 ? hinge.left : hinge.right;
        return overPunch(faces, bent(hinges, own, done, root, first, direction), first);
      }),
    );
  });
  return Math.min(...least);
};

interface Bent {
  readonly face: number;
  /** From the face's own hinge to the one at the punch. */
  readonly turns: readonly Turn[];
  /** Whether a fold already made lies between it and the punch. */
  readonly folded: boolean;
}

/** Every face on one side of the punch with the turns that bring it to its place. */
const bent = (
  hinges: readonly Hinge[],
  own: number,
  done: ReadonlySet<number>,
  root: number,
  first: Turn,
  up: 'up' | 'down',
): readonly Bent[] => {
  const found: Bent[] = [{ face: root, turns: [first], folded: false }];
  for (const { face, turns, folded } of found)
    hinges.forEach((hinge, i) => {
      const next = hinge.right === face ? hinge.left : hinge.left === face ? hinge.right : null;
      if (i === own || next === null || found.some((f) => f.face === next)) return;
      const made = done.has(i);
      const { direction, angle } = hinge.folds[0]!;
      const turn: Turn = {
        hinge,
        angle: direction === up ? angle : -angle,
        side: hinge.left === next ? 1 : -1,
      };
      found.push({ face: next, turns: made ? [turn, ...turns] : turns, folded: folded || made });
    });
  return found;
};

const overPunch = (
  faces: HingedPart['faces'],
  bentFaces: readonly Bent[],
  { hinge, angle, side }: Turn,
): number => {
  const along = unit2(subtract2(hinge.to, hinge.from));
  const length = dot2(subtract2(hinge.to, hinge.from), along);
  const normal = left2(along);
  const short = Math.min(practice.punch_short_of_fold_mm, length / 2);
  // Nearer to the leg than its bends are wide a face is its own root, and the punch's nose is narrower than the leg's V.
  const clear = Math.max(...bentFaces.flatMap((b) => b.turns.map((t) => t.hinge.folds[0]!.allowance)));
  let least = Number.POSITIVE_INFINITY;
  for (const { face, turns, folded } of bentFaces) {
    if (!folded) continue;
    const points = faces[face]!.map((p) => {
      const [x, y, z] = turns.reduce<Vec3>(turned, [p[0], p[1], 0]);
      const r: Vec2 = [x - hinge.from[0], y - hinge.from[1]];
      return [side * dot2(r, normal), dot2(r, along), z] as const;
    });
    for (const [x, , z] of within(within(within(points, 1, short, 1), 1, length - short, -1), 2, 0, 1)) {
      if (z * Math.cos(angle) - x * Math.sin(angle) > clear) least = Math.min(least, x);
    }
  }
  return least;
};

/** A point turned about a line of the flat plane. */
const turned = ([x, y, z]: Vec3, { hinge, angle, side }: Turn): Vec3 => {
  const along = unit2(subtract2(hinge.to, hinge.from));
  const normal = left2(along);
  const r: Vec2 = [x - hinge.from[0], y - hinge.from[1]];
  const [s, v] = [dot2(r, along), dot2(r, normal)];
  const [cos, sin] = [Math.cos(angle), side * Math.sin(angle)];
  const [off, up] = [v * cos - z * sin, v * sin + z * cos];
  return [hinge.from[0] + s * along[0] + off * normal[0], hinge.from[1] + s * along[1] + off * normal[1], up];
};

/** The part of a polygon in space on one side of a plane square to an axis. */
const within = (polygon: readonly Vec3[], axis: 1 | 2, limit: number, sign: 1 | -1): readonly Vec3[] =>
  polygon.flatMap((p, i): readonly Vec3[] => {
    const q = polygon[(i + 1) % polygon.length]!;
    const [hp, hq] = [sign * (p[axis] - limit), sign * (q[axis] - limit)];
    const kept: Vec3[] = hp >= 0 ? [p] : [];
    if (hp < 0 !== hq < 0) {
      const t = hp / (hp - hq);
      kept.push([p[0] + t * (q[0] - p[0]), p[1] + t * (q[1] - p[1]), p[2] + t * (q[2] - p[2])]);
    }
    return kept;
  });

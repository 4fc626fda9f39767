import type { Box } from '../design/index.js';
import type { Vec3 } from '../numeric/index.js';

/** A nearest point is only known to the bound of the search, mm. */
const ON_FACE = 1e-3;

/**
 * The part of a box that a point on it belongs to, by the car's directions: "top face", "top rear edge" or "top rear
 * left corner"; null where it lies on none.
 */
export const boxPart = ({ min, max }: Pick<Box, 'min' | 'max'>, p: Vec3): string | null => {
  const side = (axis: 0 | 1 | 2, low: string, high: string): readonly string[] =>
    Math.abs(p[axis] - max[axis]) <= ON_FACE ? [high] : Math.abs(p[axis] - min[axis]) <= ON_FACE ? [low] : [];
  const sides = [...side(2, 'bottom', 'top'), ...side(0, 'rear', 'front'), ...side(1, 'right', 'left')];
  const kind = [null, 'face', 'edge', 'corner'][sides.length];
  return kind == null ? null : [...sides, kind].join(' ');
};

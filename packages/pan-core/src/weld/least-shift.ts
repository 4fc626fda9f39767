import { dot3, length3, scale3, subtract3, type Vec3 } from '../numeric/index.js';

/** A face that asks a point to move by `by` mm along its unit normal. */
export interface Push {
  readonly normal: Vec3;
  readonly by: number;
}

// Directions that no face cares about leave the point where it is along them.
const FLAT = 1e-6;

/**
 * The shortest move that meets every push, or comes nearest to them in the sense of least squares.
 *
 * The normals span a line, a plane or space (Gram–Schmidt); the normal equations are solved on that span.
 */
export const leastShift = (pushes: readonly Push[]): Vec3 => {
  const axes: Vec3[] = [];
  for (const { normal } of pushes) {
    const rest = axes.reduce((r, axis) => subtract3(r, scale3(axis, dot3(r, axis))), normal);
    const length = length3(rest);
    if (length > FLAT && axes.length < 3) axes.push(scale3(rest, 1 / length));
  }
  return solveOn(axes, pushes);
};

/** Normal equations of the pushes in the plane or space that the axes span, by elimination with pivots. */
const solveOn = (axes: readonly Vec3[], pushes: readonly Push[]): Vec3 => {
  const rows = axes.map((a) => [
    ...axes.map((b) => pushes.reduce((sum, p) => sum + dot3(p.normal, a) * dot3(p.normal, b), 0)),
    pushes.reduce((sum, p) => sum + dot3(p.normal, a) * p.by, 0),
  ]);
  const n = axes.length;
  for (let k = 0; k < n; k++) {
    let best = k;
    for (let i = k + 1; i < n; i++) if (Math.abs(rows[i]![k]!) > Math.abs(rows[best]![k]!)) best = i;
    [rows[k], rows[best]] = [rows[best]!, rows[k]!];
    for (let i = 0; i < n; i++) {
      if (i === k) continue;
      const factor = rows[i]![k]! / rows[k]![k]!;
      for (let j = k; j <= n; j++) rows[i]![j]! -= factor * rows[k]![j]!;
    }
  }
  return axes.reduce<Vec3>(
    (sum, axis, k) => {
      const by = rows[k]![n]! / rows[k]![k]!;
      return [sum[0] + axis[0] * by, sum[1] + axis[1] * by, sum[2] + axis[2] * by];
    },
    [0, 0, 0],
  );
};

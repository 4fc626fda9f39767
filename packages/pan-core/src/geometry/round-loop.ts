import { choleskyFactor, choleskySolve, type Vec2 } from '../numeric/index.js';

/**
 * Centre of the circle nearest the points: x² + y² = 2·a·x + 2·b·y + c by least squares, exact where they lie on one.
 * I. Kåsa, IEEE Trans. Instrum. Meas. 25 (1976) 8–14 (from memory). null when they lie in a line.
 */
const roundCentre = (points: readonly Vec2[]): Vec2 | null => {
  const n = points.length;
  const middle: Vec2 = [
    points.reduce((sum, [x]) => sum + x, 0) / n,
    points.reduce((sum, [, y]) => sum + y, 0) / n,
  ];
  const [matrix, right] = [new Float64Array(4), new Float64Array(2)];
  for (const [px, py] of points) {
    const [x, y] = [px - middle[0], py - middle[1]];
    const square = (x * x + y * y) / 2;
    matrix[0] = (matrix[0] as number) + x * x;
    matrix[1] = (matrix[1] as number) + x * y;
    matrix[3] = (matrix[3] as number) + y * y;
    right[0] = (right[0] as number) + x * square;
    right[1] = (right[1] as number) + y * square;
  }
  matrix[2] = matrix[1] as number;
  const factor = choleskyFactor(matrix, 2);
  if (factor === null) return null;
  const [a = 0, b = 0] = choleskySolve(factor, right);
  return [middle[0] + a, middle[1] + b];
};

/** A circle that all corners of a loop lie on; null when they do not, or are too few to tell. */
export const circleThrough = (
  loop: readonly Vec2[],
): { readonly at: Vec2; readonly diameter: number } | null => {
  if (loop.length < 12) return null;
  const at = roundCentre(loop);
  if (at === null) return null;
  const radii = loop.map(([x, y]) => Math.hypot(x - at[0], y - at[1]));
  const radius = radii.reduce((a, b) => a + b, 0) / radii.length;
  if (!(radius > 0) || radii.some((r) => Math.abs(r - radius) > Math.max(0.02, 0.01 * radius))) return null;
  const angles = loop.map(([x, y]) => Math.atan2(y - at[1], x - at[0])).sort((a, b) => a - b);
  const widest = angles.reduce(
    (most, angle, i) =>
      Math.max(
        most,
        i === 0
          ? angle + 2 * Math.PI - (angles[angles.length - 1] as number)
          : angle - (angles[i - 1] as number),
      ),
    0,
  );
  return widest <= Math.PI / 4 ? { at, diameter: 2 * radius } : null;
};

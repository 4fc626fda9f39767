type Point = readonly [number, number];

/** Twice the signed area; positive when the corners run counter-clockwise. */
export const signedDoubleArea = (points: readonly Point[]): number =>
  points.reduce((sum, [x, y], i) => {
    const [nextX, nextY] = points[(i + 1) % points.length] as Point;
    return sum + x * nextY - nextX * y;
  }, 0);

/** Position of a corner that equals the one before it (the last may not repeat the first either). */
export const doubledPoint = (points: readonly Point[]): number | null => {
  for (const [i, [x, y]] of points.entries()) {
    const [lastX, lastY] = points[(i + points.length - 1) % points.length] as Point;
    if (x === lastX && y === lastY) return i;
  }
  return null;
};

const side = (a: Point, b: Point, p: Point): number =>
  Math.sign((b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0]));

const within = (a: Point, b: Point, p: Point): boolean =>
  Math.min(a[0], b[0]) <= p[0] &&
  p[0] <= Math.max(a[0], b[0]) &&
  Math.min(a[1], b[1]) <= p[1] &&
  p[1] <= Math.max(a[1], b[1]);

const meet = (a: Point, b: Point, c: Point, d: Point): boolean => {
  const [s1, s2, s3, s4] = [side(a, b, c), side(a, b, d), side(c, d, a), side(c, d, b)];
  if (s1 !== s2 && s3 !== s4) return true;
  return (
    (s1 === 0 && within(a, b, c)) ||
    (s2 === 0 && within(a, b, d)) ||
    (s3 === 0 && within(c, d, a)) ||
    (s4 === 0 && within(c, d, b))
  );
};

/** First pair of edges (by the corner each starts from) that touch although they are not neighbours. */
export const crossing = (points: readonly Point[]): readonly [number, number] | null => {
  const n = points.length;
  const at = (i: number): Point => points[i % n] as Point;
  for (let i = 0; i < n; i++) {
    const [a, b, c] = [at(i), at(i + 1), at(i + 2)];
    if (side(a, b, c) === 0 && (within(a, b, c) || within(b, c, a))) return [i, (i + 1) % n];
    for (let j = i + 2; j < n; j++) {
      if (i === 0 && j === n - 1) continue;
      if (meet(at(i), at(i + 1), at(j), at(j + 1))) return [i, j];
    }
  }
  return null;
};

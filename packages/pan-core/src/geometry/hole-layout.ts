import type { Vec2 } from '../numeric/index.js';
import type { HoleDistance } from './hole-network.js';

const TURNS = 300;

/** Shortest way from hole to hole along measured distances (Floyd and Warshall); Infinity where there is none. */
const shortestWays = (count: number, distances: readonly HoleDistance[]): Float64Array => {
  const ways = new Float64Array(count * count).fill(Number.POSITIVE_INFINITY);
  for (let i = 0; i < count; i++) ways[i * count + i] = 0;
  for (const {
    holes: [a, b],
    length,
  } of distances) {
    ways[a * count + b] = length;
    ways[b * count + a] = length;
  }
  for (let k = 0; k < count; k++) {
    for (let i = 0; i < count; i++) {
      for (let j = 0; j < count; j++) {
        const through = (ways[i * count + k] as number) + (ways[k * count + j] as number);
        if (through < (ways[i * count + j] as number)) ways[i * count + j] = through;
      }
    }
  }
  return ways;
};

/** Largest eigenvalue and its vector by repeated multiplication, apart from those found before. */
const leading = (
  matrix: Float64Array,
  n: number,
  before: readonly Float64Array[],
): readonly [number, Float64Array] => {
  let vector = Float64Array.from({ length: n }, (_, i) => Math.sin(1 + 1.7 * i) + 0.1);
  let value = 0;
  for (let turn = 0; turn < TURNS; turn++) {
    for (const other of before) {
      const share = vector.reduce((sum, v, i) => sum + v * (other[i] as number), 0);
      vector = vector.map((v, i) => v - share * (other[i] as number));
    }
    const next = new Float64Array(n);
    for (let i = 0; i < n; i++)
      for (let j = 0; j < n; j++)
        next[i] = (next[i] as number) + (matrix[i * n + j] as number) * (vector[j] as number);
    value = Math.hypot(...next);
    if (value < 1e-12) break;
    vector = next.map((v) => v / value);
  }
  return [value, vector];
};

/**
 * A first layout from distances alone: classical scaling of the shortest ways between holes, up to a turn and a
 * mirroring. W. S. Torgerson, Psychometrika 17 (1952) 401–419 (from memory). null when some hole hangs on nothing.
 */
export const scaledLayout = (count: number, distances: readonly HoleDistance[]): readonly Vec2[] | null => {
  const squares = shortestWays(count, distances).map((d) => d * d);
  if (squares.some((s) => !Number.isFinite(s))) return null;
  const mean = (i: number): number =>
    squares.subarray(i * count, (i + 1) * count).reduce((a, b) => a + b, 0) / count;
  const means = Array.from({ length: count }, (_, i) => mean(i));
  const whole = means.reduce((a, b) => a + b, 0) / count;
  const centred = squares.map((s, at) => {
    const [i, j] = [Math.floor(at / count), at % count];
    return -(s - (means[i] as number) - (means[j] as number) + whole) / 2;
  });
  const [first, u] = leading(centred, count, []);
  const [second, v] = leading(centred, count, [u]);
  return Array.from(
    { length: count },
    (_, i): Vec2 => [Math.sqrt(first) * (u[i] as number), Math.sqrt(second) * (v[i] as number)],
  );
};

/** A first layout from the order alone: evenly around an ellipse as long and as wide as the distances suggest. */
export const ringLayout = (count: number, distances: readonly HoleDistance[]): readonly Vec2[] => {
  const longest = Math.max(...distances.map(({ length }) => length));
  return Array.from({ length: count }, (_, i): Vec2 => {
    const angle = (2 * Math.PI * i) / count;
    return [(Math.cos(angle) * longest) / 2, (Math.sin(angle) * longest) / 6];
  });
};

/** One hole turned over the line that lies best among the holes it was measured to. */
export const flippedOver = (
  points: readonly Vec2[],
  hole: number,
  distances: readonly HoleDistance[],
): readonly Vec2[] => {
  const near = distances.flatMap(({ holes: [a, b] }) => (a === hole ? [b] : b === hole ? [a] : []));
  const others = near.map((i) => points[i] as Vec2);
  const middle: Vec2 = [
    others.reduce((sum, p) => sum + p[0], 0) / others.length,
    others.reduce((sum, p) => sum + p[1], 0) / others.length,
  ];
  let [xx, xy, yy] = [0, 0, 0];
  for (const [x, y] of others) {
    const [dx, dy] = [x - middle[0], y - middle[1]];
    xx += dx * dx;
    xy += dx * dy;
    yy += dy * dy;
  }
  const along = Math.atan2(2 * xy, xx - yy) / 2;
  const [c, s] = [Math.cos(2 * along), Math.sin(2 * along)];
  return points.map((point, i): Vec2 => {
    if (i !== hole) return point;
    const [dx, dy] = [point[0] - middle[0], point[1] - middle[1]];
    return [middle[0] + c * dx + s * dy, middle[1] + s * dx - c * dy];
  });
};

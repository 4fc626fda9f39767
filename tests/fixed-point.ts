import { cross3, type Vec3 } from 'pan-core/numeric/index.js';
import type { PanModel } from 'pan-core/pan/index.js';

/** Numbers as integers times 2^−240: every product of the doubles here is held far below the last digit asked. */
const BITS = 240n;
const ONE = 1n << BITS;

export const exact = (x: number): bigint => {
  const view = new DataView(new ArrayBuffer(8));
  view.setFloat64(0, x);
  const bits = view.getBigUint64(0);
  const exponent = (bits >> 52n) & 0x7ffn;
  const fraction = bits & 0xfffffffffffffn;
  const mantissa = exponent === 0n ? fraction : fraction | 0x10000000000000n;
  const shift = (exponent === 0n ? 1n : exponent) - 1075n + BITS;
  const size = shift >= 0n ? mantissa << shift : mantissa >> -shift;
  return bits >> 63n === 1n ? -size : size;
};

const times = (a: bigint, b: bigint): bigint => (a * b) >> BITS;
const over = (a: bigint, b: bigint): bigint => (a << BITS) / b;
export const toNumber = (a: bigint): number => Number(a >> (BITS - 80n)) / 2 ** 80;

type Point = readonly [bigint, bigint, bigint];

/**
 * Oil under the level plane up·(p − origin) ≤ h in the given cells, by tetrahedra from each cell's first
 * corner: another road than the columns of the level solver, in arithmetic that does not round.
 */
export const exactVolume = (
  model: PanModel,
  cells: readonly number[],
  up: Vec3,
  origin: Vec3,
  h: number,
): bigint => {
  const n: Point = [exact(up[0]), exact(up[1]), exact(up[2])];
  const o: Point = [exact(origin[0]), exact(origin[1]), exact(origin[2])];
  const level = exact(h);
  const place = (p: Vec3): Point => [exact(p[0]) - o[0], exact(p[1]) - o[1], exact(p[2]) - o[2]];
  const height = (p: Point): bigint => times(n[0], p[0]) + times(n[1], p[1]) + times(n[2], p[2]);
  let sum = 0n;
  for (const c of cells) {
    const faces = (model.cells[c] as PanModel['cells'][number]).faces;
    const apex = place((faces[0] as (typeof faces)[number]).loop[0] as Vec3);
    let cell = 0n;
    for (const face of faces)
      for (let i = 1; i + 1 < face.loop.length; i++) {
        const [a, b, d] = [face.loop[0], face.loop[i], face.loop[i + 1]].map((p) => place(p as Vec3)) as [
          Point,
          Point,
          Point,
        ];
        cell += tetrahedronBelow([apex, a, b, d], height, level);
      }
    sum += times(cell, exact(model.shares[c] as number));
  }
  return sum / 6n;
};

const minus = (a: Point, b: Point): Point => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];

const six = ([a, b, c, d]: readonly [Point, Point, Point, Point]): bigint => {
  const [u, v, w] = [minus(b, a), minus(c, a), minus(d, a)];
  return (
    times(u[0], times(v[1], w[2]) - times(v[2], w[1])) -
    times(u[1], times(v[0], w[2]) - times(v[2], w[0])) +
    times(u[2], times(v[0], w[1]) - times(v[1], w[0]))
  );
};

/** Six times the signed volume of the part below the level: a corner of a tetrahedron scales with its edges. */
const tetrahedronBelow = (
  t: readonly [Point, Point, Point, Point],
  height: (p: Point) => bigint,
  level: bigint,
): bigint => {
  const whole = six(t);
  if (whole === 0n) return 0n;
  const z = t.map(height).sort((p, q) => (p < q ? -1 : p > q ? 1 : 0)) as [bigint, bigint, bigint, bigint];
  if (level <= z[0]) return 0n;
  if (level >= z[3]) return whole;
  const corner = (at: bigint, others: readonly bigint[]): bigint =>
    others.reduce((v, other) => times(v, over(level - at, other - at)), ONE);
  if (level <= z[1]) return times(whole, corner(z[0], [z[1], z[2], z[3]]));
  if (level >= z[2]) return whole - times(whole, corner(z[3], [z[0], z[1], z[2]]));
  // Between the middle two: a corner less what of it reaches past the next height, from the side whose two
  // heights are further apart; where both pairs coincide the slice is 3t² − 2t³.
  const cube = (d: bigint): bigint => times(times(d, d), d);
  const [low, high] = [z[1] - z[0], z[3] - z[2]];
  if (low === 0n && high === 0n) {
    const s = over(level - z[0], z[2] - z[0]);
    return times(whole, 3n * times(s, s) - 2n * cube(s));
  }
  if (low >= high) {
    const past = over(cube(level - z[1]), times(times(low, z[2] - z[1]), z[3] - z[1]));
    return times(whole, corner(z[0], [z[1], z[2], z[3]]) - past);
  }
  const past = over(cube(z[2] - level), times(times(high, z[2] - z[1]), z[2] - z[0]));
  return whole - times(whole, corner(z[3], [z[0], z[1], z[2]]) - past);
};

export const upFrom = (x: number, y: number): Vec3 => {
  const n = cross3([1, 0, -x], [0, 1, -y]);
  const l = Math.hypot(n[0], n[1], n[2]);
  return [n[0] / l, n[1] / l, n[2] / l];
};

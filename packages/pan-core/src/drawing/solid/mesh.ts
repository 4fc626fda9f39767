import { PanError } from '../../errors/index.js';
import { cross3, dot3, subtract3, type Vec3 } from '../../numeric/index.js';

/** Triangles by places among points, counter-clockwise seen from outside; mm. */
export interface Mesh {
  readonly points: readonly Vec3[];
  readonly triangles: readonly (readonly [number, number, number])[];
}

/** Volume enclosed, mm³, from the mesh's own first point: divergence theorem. */
export const meshVolume = ({ points, triangles }: Mesh): number => {
  const o = points[0];
  if (o === undefined) return 0;
  let six = 0;
  for (const [i, j, k] of triangles) {
    const [a, b, c] = [points[i], points[j], points[k]].map((p) => subtract3(p as Vec3, o)) as [
      Vec3,
      Vec3,
      Vec3,
    ];
    six += dot3(a, cross3(b, c));
  }
  return six / 6;
};

/**
 * Convex flat loops as triangles. A loop with points along its edges gets one more in its middle, so
 * that no triangle is flat.
 */
export const meshOfLoops = (points: readonly Vec3[], loops: readonly (readonly number[])[]): Mesh => {
  const all = [...points];
  const triangles: [number, number, number][] = [];
  for (const loop of loops) {
    if (loop.length === 3) {
      triangles.push([loop[0] as number, loop[1] as number, loop[2] as number]);
      continue;
    }
    const middle = all.length;
    const sum = loop.reduce<[number, number, number]>(
      (s, place) => {
        const p = points[place] as Vec3;
        return [s[0] + p[0], s[1] + p[1], s[2] + p[2]];
      },
      [0, 0, 0],
    );
    all.push([sum[0] / loop.length, sum[1] / loop.length, sum[2] / loop.length]);
    loop.forEach((place, i) => {
      triangles.push([place, loop[(i + 1) % loop.length] as number, middle]);
    });
  }
  return { points: all, triangles };
};

/**
 * Rounds to the 32-bit numbers an STL holds, joins points that have become equal and drops triangles
 * that have collapsed.
 */
export const roundMesh = ({ points, triangles }: Mesh): Mesh => {
  const places = new Map<string, number>();
  const kept: Vec3[] = [];
  const renamed = points.map((p) => {
    const q: Vec3 = [Math.fround(p[0]) + 0, Math.fround(p[1]) + 0, Math.fround(p[2]) + 0];
    const key = q.join();
    const known = places.get(key);
    if (known !== undefined) return known;
    places.set(key, kept.length);
    kept.push(q);
    return kept.length - 1;
  });
  const left = triangles
    .map(([i, j, k]) => [renamed[i] as number, renamed[j] as number, renamed[k] as number] as const)
    .filter(([i, j, k]) => i !== j && j !== k && k !== i);
  return { points: kept, triangles: left };
};

/**
 * Proves a mesh closed: every edge is run as often one way as the other.
 *
 * @throws PanError `internal` naming the first place where it is not
 */
export const requireClosed = (mesh: Mesh, what: string): Mesh => {
  const balance = new Map<string, number>();
  for (const triangle of mesh.triangles) {
    triangle.forEach((a, i) => {
      const b = triangle[(i + 1) % 3] as number;
      const [key, sense] = a < b ? [`${a} ${b}`, 1] : [`${b} ${a}`, -1];
      balance.set(key, (balance.get(key) ?? 0) + sense);
    });
  }
  for (const [key, sum] of balance) {
    if (sum === 0) continue;
    const at = (mesh.points[Number(key.split(' ')[0])] as Vec3).map((v) => v.toFixed(2)).join(', ');
    throw new PanError({
      code: 'internal',
      path: [],
      message: `The solid of the ${what} does not close at [${at}] mm.`,
      advice: 'Please report this with the design file that caused it.',
    });
  }
  return mesh;
};

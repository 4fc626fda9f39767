import type { PageMesh } from './data.js';

type Point3 = readonly [number, number, number];

/** Faces that turn by less than this, as a cosine, are one surface to the eye. */
const SAME = Math.cos((25 * Math.PI) / 180);

/** A triangle lower than this on its long side is a sliver: corners are given to a tenth, mm. */
const SLIVER = 0.25;

const pointOf = ({ points }: PageMesh, i: number): Point3 => [
  points[3 * i] as number,
  points[3 * i + 1] as number,
  points[3 * i + 2] as number,
];

/** null for a sliver, whose corners are too short of digits to say which way it faces. */
const normalOf = (a: Point3, b: Point3, c: Point3): Point3 | null => {
  const [ux, uy, uz] = [b[0] - a[0], b[1] - a[1], b[2] - a[2]];
  const [vx, vy, vz] = [c[0] - a[0], c[1] - a[1], c[2] - a[2]];
  const raw = [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx] as const;
  const size = Math.sqrt(raw[0] ** 2 + raw[1] ** 2 + raw[2] ** 2);
  const long = Math.sqrt(Math.max(ux * ux + uy * uy + uz * uz, vx * vx + vy * vy + vz * vz));
  if (size < SLIVER * long) return null;
  return [raw[0] / size, raw[1] / size, raw[2] / size];
};

interface Found {
  readonly ends: readonly [Point3, Point3];
  readonly normals: (Point3 | null)[];
}

/** Edges where a solid turns sharply or ends, which is what a draughtsman draws of it. */
export const creaseLines = (mesh: PageMesh): readonly (readonly [Point3, Point3])[] => {
  const found = new Map<string, Found>();
  for (let t = 0; t < mesh.triangles.length; t += 3) {
    const corners = [0, 1, 2].map((k) => pointOf(mesh, mesh.triangles[t + k] as number));
    const [a, b, c] = corners as [Point3, Point3, Point3];
    const normal = normalOf(a, b, c);
    for (const [p, q] of [
      [a, b],
      [b, c],
      [c, a],
    ] as const) {
      const key = [p.join(), q.join()].sort().join(' ');
      const edge = found.get(key) ?? { ends: [p, q], normals: [] };
      edge.normals.push(normal);
      found.set(key, edge);
    }
  }
  return [...found.values()]
    .filter(({ normals: [m, n] }) => {
      if (m === null || n === null) return false;
      if (m === undefined || n === undefined) return true;
      return m[0] * n[0] + m[1] * n[1] + m[2] * n[2] < SAME;
    })
    .map(({ ends }) => ends);
};

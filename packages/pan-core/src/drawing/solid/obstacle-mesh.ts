import { chassisAxes } from '../../clearance/index.js';
import type { Design, Plane, Prism, Rod, Scan, Shape } from '../../design/index.js';
import { type Polygon, polygonArea, rotate3, unrotate3 } from '../../geometry/index.js';
import { add3, cross3, scale3, unit3, type Vec2, type Vec3 } from '../../numeric/index.js';
import { convexParts } from '../../pan/index.js';
import { type Mesh, meshOfLoops } from './mesh.js';

/** An obstacle to look at, in pan axes, mm. */
export interface ObstaclePicture {
  readonly name: string;
  readonly mesh: Mesh;
  /** Only some of a measured surface's triangles: distances are taken to all of them. */
  readonly thinned: boolean;
}

/** Corners round a drawn rod. */
const ROUND = 16;
/** Half the width of what is drawn of an endless plane, mm. */
const PLANE_REACH = 450;

const prismMesh = (base: readonly Vec3[], top: readonly Vec3[]): Mesh => {
  const n = base.length;
  const loops = [
    base.map((_, i) => n - 1 - i),
    top.map((_, i) => n + i),
    ...base.map((_, i) => [i, (i + 1) % n, n + ((i + 1) % n), n + i]),
  ];
  return meshOfLoops([...base, ...top], loops);
};

const joined = (meshes: readonly Mesh[]): Mesh => {
  const points: Vec3[] = [];
  const triangles: (readonly [number, number, number])[] = [];
  for (const mesh of meshes) {
    const first = points.length;
    points.push(...mesh.points);
    triangles.push(...mesh.triangles.map(([a, b, c]) => [a + first, b + first, c + first] as const));
  }
  return { points, triangles };
};

const boxMesh = (min: Vec3, max: Vec3): Mesh => {
  const ring = (z: number): Vec3[] => [
    [min[0], min[1], z],
    [max[0], min[1], z],
    [max[0], max[1], z],
    [min[0], max[1], z],
  ];
  return prismMesh(ring(min[2]), ring(max[2]));
};

/** A pair of unit vectors square to a direction and to each other. */
const across = (axis: Vec3): readonly [Vec3, Vec3] => {
  const helper: Vec3 = Math.abs(axis[2]) < 0.9 ? [0, 0, 1] : [1, 0, 0];
  const u = unit3(cross3(helper, axis));
  return [u, cross3(axis, u)];
};

const rodMesh = ({ from, to, diameter, travel, positions = [] }: Rod): Mesh => {
  const still = travel.every((v) => v === 0);
  const places = [
    [from, to] as const,
    ...positions,
    ...(still
      ? []
      : [-1, 1].map((s) => [add3(from, scale3(travel, s)), add3(to, scale3(travel, s))] as const)),
  ];
  return joined(
    places.map(([a, b]) => {
      const [u, v] = across(unit3([b[0] - a[0], b[1] - a[1], b[2] - a[2]]));
      const ring = (p: Vec3): Vec3[] =>
        Array.from({ length: ROUND }, (_, i) => {
          const t = (2 * Math.PI * i) / ROUND;
          const r = diameter / 2;
          return add3(p, add3(scale3(u, r * Math.cos(t)), scale3(v, r * Math.sin(t))));
        });
      return prismMesh(ring(a), ring(b));
    }),
  );
};

const planeMesh = ({ at, normal }: Plane): Mesh => {
  const [u, v] = across(normal);
  const points = [
    [-1, -1],
    [1, -1],
    [1, 1],
    [-1, 1],
  ].map(([s = 0, t = 0]) => add3(at, add3(scale3(u, s * PLANE_REACH), scale3(v, t * PLANE_REACH))));
  return meshOfLoops(points, [[0, 1, 2, 3]]);
};

const profileMesh = ({ along, profile, from, to }: Prism): Mesh => {
  const turned: Polygon = polygonArea(profile) < 0 ? [...profile].reverse() : profile;
  const lift = (station: number, [a, b]: Vec2): Vec3 =>
    along === 'x' ? [station, a, b] : along === 'y' ? [a, station, b] : [a, b, station];
  return joined(
    convexParts(turned).map((part) =>
      prismMesh(
        part.map((p) => lift(from, p)),
        part.map((p) => lift(to, p)),
      ),
    ),
  );
};

const scanMesh = ({ soup, unit, rotation, origin }: Scan, most: number): Mesh => {
  if (soup === null) return { points: [], triangles: [] };
  const every = Math.max(1, Math.ceil(soup.count / most));
  const points: Vec3[] = [];
  const triangles: [number, number, number][] = [];
  for (let t = 0; t < soup.count; t += every) {
    const first = points.length;
    for (let k = 0; k < 3; k++) {
      const at = 9 * t + 3 * k;
      const p: Vec3 = [
        (soup.corners[at] as number) * unit.size,
        (soup.corners[at + 1] as number) * unit.size,
        (soup.corners[at + 2] as number) * unit.size,
      ];
      points.push(add3(rotate3(rotation, p), origin));
    }
    triangles.push([first, first + 1, first + 2]);
  }
  return { points, triangles };
};

const meshOf = (shape: Shape, most: number): Mesh => {
  switch (shape.kind) {
    case 'box':
      return boxMesh(shape.min, shape.max);
    case 'rod':
      return rodMesh(shape);
    case 'plane':
      return planeMesh(shape);
    case 'prism':
      return profileMesh(shape);
    case 'scan':
      return scanMesh(shape, most);
  }
};

/** The road under a car at rest, in pan axes, mm; null where it or the chassis's axes are not known. */
export const roadPlane = (design: Design): { readonly at: Vec3; readonly normal: Vec3 } | null => {
  const axes = chassisAxes(design);
  const { ground } = design.chassis;
  if (!axes.known || ground === null) return null;
  return { at: unrotate3(axes.toChassis, [0, 0, ground]), normal: unrotate3(axes.toChassis, [0, 0, 1]) };
};

/**
 * The chassis's obstacles as they stand to the pan at rest; none where the chassis's axes are not known.
 *
 * @param most triangles to keep of each measured surface
 */
export const obstaclePictures = (design: Design, most: number): readonly ObstaclePicture[] => {
  const axes = chassisAxes(design);
  if (!axes.known) return [];
  return design.chassis.obstacles.map(({ name, shape }) => {
    const { points, triangles } = meshOf(shape, most);
    return {
      name,
      mesh: { points: points.map((p) => unrotate3(axes.toChassis, p)), triangles },
      thinned: shape.kind === 'scan' && shape.soup !== null && shape.soup.count > most,
    };
  });
};

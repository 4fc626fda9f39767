import {
  circlePath,
  clockwise,
  counterClockwise,
  type Frame,
  type Path,
  pathPoints,
} from '../../geometry/index.js';
import type { Vec2, Vec3 } from '../../numeric/index.js';
import type { Part } from '../../sheet/index.js';
import { joinPoints } from '../../weld/index.js';
import { type Mesh, meshOfLoops, requireClosed, roundMesh } from './mesh.js';

/** How far a chord may leave its arc, mm: less than a printer can show. */
const CHORD = 0.02;
// An outline point this near the line of its neighbours would be dropped by the capping and leave a gap.
const STRAIGHT = 1e-9;

/** Where a plate's own x, y and thickness lie in the pan. */
export interface PlateFrame extends Frame {
  readonly normal: Vec3;
}

const FLAT: PlateFrame = { origin: [0, 0, 0], u: [1, 0, 0], v: [0, 1, 0], normal: [0, 0, 1] };

/** A flat part as a closed solid of its thickness, the drawn face up, lowest face at z = 0. */
export const plateSolid = (part: Part): Promise<Mesh> =>
  extrudedSolid(
    [part.outline],
    [...part.openings, ...part.holes.map((hole) => circlePath(hole.at, hole.diameter / 2))],
    part.thickness,
    `part "${part.name}"`,
  );

/**
 * Outlines with holes as a closed solid: `frame.origin` to a thickness along `frame.normal`, which is
 * u × v.
 *
 * @param what for the message if it does not close
 */
export const extrudedSolid = async (
  outlines: readonly Path[],
  holes: readonly Path[],
  thickness: number,
  what: string,
  frame: PlateFrame = FLAT,
): Promise<Mesh> => {
  // A fifth of a second of loading that only a cut set with solids should pay for.
  const { default: jscad } = await import('@jscad/modeling');
  const loops = [...outlines.map(counterClockwise), ...holes.map(clockwise)].map(corners);
  const sides = loops.flatMap((loop) =>
    loop.map((p, i): [[number, number], [number, number]] => {
      const q = loop[(i + 1) % loop.length] as Vec2;
      return [
        [p[0], p[1]],
        [q[0], q[1]],
      ];
    }),
  );
  const solid = jscad.extrusions.extrudeLinear({ height: thickness }, jscad.geometries.geom2.create(sides));
  const faces = jscad.geometries.geom3
    .toPolygons(solid)
    .map((face) => face.vertices.map(([x, y, z]) => placed(frame, x, y, z)));
  const { points, loops: joined } = joinPoints(faces);
  const whole = joined.filter((loop) => loop.length >= 3);
  return requireClosed(roundMesh(meshOfLoops(points, whole)), what);
};

const placed = ({ origin, u, v, normal }: PlateFrame, x: number, y: number, z: number): Vec3 => [
  origin[0] + x * u[0] + y * v[0] + z * normal[0],
  origin[1] + x * u[1] + y * v[1] + z * normal[1],
  origin[2] + x * u[2] + y * v[2] + z * normal[2],
];

/** The corners of a closed path, arcs as chords, without points in line with their neighbours. */
const corners = (path: Path): readonly Vec2[] => {
  const points = pathPoints(path, CHORD).slice(0, -1);
  return points.filter((p, i) => {
    const a = points[(i + points.length - 1) % points.length] as Vec2;
    const b = points[(i + 1) % points.length] as Vec2;
    const twice = (p[0] - a[0]) * (b[1] - a[1]) - (p[1] - a[1]) * (b[0] - a[0]);
    return Math.abs(twice) > STRAIGHT * Math.hypot(b[0] - a[0], b[1] - a[1]);
  });
};

import { circlePath, clockwise, counterClockwise, type Path, pathPoints } from '../geometry/index.js';
import type { Vec2, Vec3 } from '../numeric/index.js';
import type { Part } from '../sheet/index.js';
import { joinPoints } from '../weld/index.js';
import { type Mesh, meshOfLoops, requireClosed, roundMesh } from './mesh.js';

/** How far a chord may leave its arc, mm: less than a printer can show. */
const CHORD = 0.02;
// An outline point this near the line of its neighbours would be dropped by the capping and leave a gap.
const STRAIGHT = 1e-9;

/** A flat part as a closed solid of its thickness, the drawn face up, lowest face at z = 0. */
export const plateSolid = async (part: Part): Promise<Mesh> => {
  // A fifth of a second of loading that only a cut set with solids should pay for.
  const { default: jscad } = await import('@jscad/modeling');
  const loops = [
    counterClockwise(part.outline),
    ...part.openings.map(clockwise),
    ...part.holes.map((hole) => clockwise(circlePath(hole.at, hole.diameter / 2))),
  ].map(corners);
  const sides = loops.flatMap((loop) =>
    loop.map((p, i): [[number, number], [number, number]] => {
      const q = loop[(i + 1) % loop.length] as Vec2;
      return [
        [p[0], p[1]],
        [q[0], q[1]],
      ];
    }),
  );
  const solid = jscad.extrusions.extrudeLinear(
    { height: part.thickness },
    jscad.geometries.geom2.create(sides),
  );
  const faces = jscad.geometries.geom3
    .toPolygons(solid)
    .map((face) => face.vertices.map(([x, y, z]): Vec3 => [x, y, z]));
  const { points, loops: joined } = joinPoints(faces);
  const whole = joined.filter((loop) => loop.length >= 3);
  return requireClosed(roundMesh(meshOfLoops(points, whole)), `part "${part.name}"`);
};

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

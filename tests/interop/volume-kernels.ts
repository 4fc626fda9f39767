import jscad from '@jscad/modeling';
import openManifold, { type Manifold } from 'manifold-3d';
import type { Corners, Point } from './volume-solids.js';

const finite = (points: Corners): [number, number, number][] => {
  // One of the two takes NaN without a word.
  if (!points.every((p) => p.every(Number.isFinite))) throw new Error('A corner is not a finite number.');
  return points.map((p) => [p[0], p[1], p[2]]);
};

/** As the function takes them; its declared type asks for one list too many. */
type JscadPoints = Parameters<typeof jscad.geometries.geom3.fromPointsConvex>[0];

/** Volume of a convex solid by @jscad/modeling 2.13: hull of the corners, then its measurement. */
export const volumeByJscad = (corners: Corners): number =>
  jscad.measurements.measureVolume(
    jscad.geometries.geom3.fromPointsConvex(finite(corners) as unknown as JscadPoints),
  );

const kernel = await openManifold();
kernel.setup();

/** A convex solid in manifold-3d 3.2.1. */
export const manifoldOf = (corners: Corners): Manifold => kernel.Manifold.hull(finite(corners));

export const boxOf = (min: Point, max: Point): Manifold =>
  kernel.Manifold.cube([max[0] - min[0], max[1] - min[1], max[2] - min[2]]).translate([
    min[0],
    min[1],
    min[2],
  ]);

export const unionOf = (solids: readonly Manifold[]): Manifold => kernel.Manifold.union(solids);

// The same pan as one solid in two general geometry kernels, each asked for levels the best way it has.
import jscad from '@jscad/modeling';
import openManifold from 'manifold-3d';

const { geom3 } = jscad.geometries;
const { intersect } = jscad.booleans;
const { cuboid } = jscad.primitives;
const { measureVolume } = jscad.measurements;

const kernel = await openManifold();
kernel.setup();

/** All cells in one solid, corners from the local point `origin`. */
export const manifoldOf = (model, origin) => {
  const cells = model.cells.map((cell) => {
    const corners = cell.faces.flatMap((face) => face.loop.map((p) => p.map((v, i) => v - origin[i])));
    return kernel.Manifold.hull(corners);
  });
  const whole = kernel.Manifold.union(cells);
  for (const cell of cells) cell.delete();
  return whole;
};

/** Column-major turn that brings `up` to z, from the half-angle form: exact at up = z. */
const upright = ([x, y, z]) => {
  const k = 1 / (1 + z);
  const rows = [
    [1 - k * x * x, -k * x * y, -x],
    [-k * x * y, 1 - k * y * y, -y],
    [x, y, z],
  ];
  return [0, 1, 2, 3].flatMap((c) => [...rows.map((row) => (c < 3 ? row[c] : 0)), c < 3 ? 0 : 1]);
};

/** A volume this near, as a share of the whole, is as near as single precision can say. */
const NEAR = 1e-6;

/**
 * Level of a volume in a solid: turned once, then Newton on its own slice area from the last level. Returns
 * the level, the share of the whole it misses by in the kernel's own measure, and the steps.
 */
export const manifoldLevel = (solid, up, volume, whole, from) => {
  const turned = solid.transform(upright(up));
  let [h, miss, steps] = [from, 0, 0];
  for (;;) {
    const below = turned.trimByPlane([0, 0, -1], -h);
    miss = (volume - below.volume()) / whole;
    below.delete();
    steps++;
    if (Math.abs(miss) < NEAR || steps === 20) break;
    const slice = turned.slice(h);
    h += (miss * whole) / slice.area();
    slice.delete();
  }
  turned.delete();
  return { h, miss, steps };
};

/** A manifold's triangles as a solid of the other kernel. */
export const jscadOf = (manifold) => {
  const { vertProperties, triVerts, numProp } = manifold.getMesh();
  const point = (i) => [0, 1, 2].map((k) => vertProperties[numProp * i + k]);
  const triangles = Array.from({ length: triVerts.length / 3 }, (_, t) =>
    [0, 1, 2].map((k) => point(triVerts[3 * t + k])),
  );
  return geom3.fromPoints(triangles);
};

const REACH = 2000;

/** Volume of a solid below the plane up·p = h: one boolean with a half-space and one measure. */
export const jscadBelow = (solid, up, h) => {
  const { translate, transform } = jscad.transforms;
  const box = translate([0, 0, h - REACH / 2], cuboid({ size: [REACH, REACH, REACH] }));
  // The turn from z to `up` is the other way round: the transpose.
  const m = upright(up);
  const back = Array.from({ length: 16 }, (_, i) => m[4 * (i % 4) + Math.floor(i / 4)]);
  return measureVolume(intersect(solid, transform(back, box)));
};

export const VERSIONS = { manifold: 'manifold-3d 3.2.1', jscad: '@jscad/modeling 2.13.0' };

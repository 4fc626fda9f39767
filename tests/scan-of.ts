import type { Scan } from 'pan-core/design/index.js';
import { NO_ROTATION, triangleSoup } from 'pan-core/geometry/index.js';

export type P3 = readonly [number, number, number];
export type Triangle = readonly [P3, P3, P3];

/** A scan in the chassis's own axes, in mm. */
export const scanOf = (triangles: readonly Triangle[]): Scan => ({
  kind: 'scan',
  file: 'soup.stl',
  unit: { name: 'mm', size: 1 },
  rotation: NO_ROTATION,
  origin: [0, 0, 0],
  residuals: null,
  soup: triangleSoup(Float32Array.from(triangles.flat(2))),
});

/** A box's twelve triangles, every other one flipped. */
export const boxTriangles = (min: P3, max: P3): readonly Triangle[] => {
  const at = (k: number): P3 => [k & 1 ? max[0] : min[0], k & 2 ? max[1] : min[1], k & 4 ? max[2] : min[2]];
  const quads = [
    [0, 1, 3, 2],
    [4, 5, 7, 6],
    [0, 1, 5, 4],
    [2, 3, 7, 6],
    [0, 2, 6, 4],
    [1, 3, 7, 5],
  ] as const;
  return quads.flatMap(([a, b, c, d]): readonly Triangle[] => [
    [at(a), at(b), at(c)],
    [at(d), at(c), at(a)],
  ]);
};

/** The bytes of a binary STL file; `facets` is what it says it holds. */
export const stlBytes = (triangles: readonly Triangle[], facets = triangles.length): Uint8Array => {
  const bytes = new Uint8Array(84 + 50 * triangles.length);
  const view = new DataView(bytes.buffer);
  view.setUint32(80, facets, true);
  triangles.flat(2).forEach((value, i) => {
    view.setFloat32(84 + 50 * Math.floor(i / 9) + 12 + 4 * (i % 9), value, true);
  });
  return bytes;
};

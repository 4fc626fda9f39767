import { hollowSolid, type Mesh, mockUpPieces, PIN } from 'pan-core/drawing/index.js';
import { buildPan } from 'pan-core/pan/index.js';
import { panSkin } from 'pan-core/weld/index.js';
import { expect, test } from 'vitest';
import { sampleDesign } from '../sample-design.js';

/** Blind holes of a mesh: the middle of each floor, where as many triangles meet as the hole has sides. */
const holesOf = ({ points, triangles }: Mesh): number => {
  const meet = points.map(() => 0);
  for (const triangle of triangles) for (const place of triangle) meet[place] = (meet[place] ?? 0) + 1;
  const radius = (at: number): number => {
    const around = new Set(triangles.filter((t) => t.includes(at)).flat());
    around.delete(at);
    const far = [...around].map((k) => Math.hypot(...[0, 1, 2].map((i) => points[k]![i]! - points[at]![i]!)));
    return Math.max(...far.map((d) => Math.abs(d - PIN.radius)));
  };
  return meet.filter((count, at) => count === 24 && radius(at) < 1e-3).length;
};

// A piece cut across after it had been cut along kept the pins of both its halves, and the other half had none.
test('a piece says as many pin holes as it has, where cuts cross', () => {
  const skin = panSkin(buildPan(sampleDesign()));
  const pieces = mockUpPieces(hollowSolid(skin, -1, 3), [220, 120, 250], 4);
  expect(pieces.length).toBeGreaterThan(3);
  expect(pieces.map(({ pins }) => pins)).toEqual(pieces.map(({ mesh }) => holesOf(mesh)));
});

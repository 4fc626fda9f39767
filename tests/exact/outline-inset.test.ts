import { fileURLToPath } from 'node:url';
import { readDesignFile } from 'pan-cli/read/index.js';
import { checkDesign } from 'pan-core';
import { circleCurve, curveChords, insetPolygon } from 'pan-core/geometry/index.js';
import { describe, expect, it } from 'vitest';
import { expectWithin } from '../numbers.js';

type Point = readonly [number, number];

/** A rectangle 200 × 100 with corners of radius r, as chords. */
const rounded = (r: number): readonly Point[] =>
  (
    [
      [200 - r, r, -Math.PI / 2],
      [200 - r, 100 - r, 0],
      [r, 100 - r, Math.PI / 2],
      [r, r, Math.PI],
    ] as const
  ).flatMap(([x, y, from]) => curveChords(circleCurve([x, y], r, from, from + Math.PI / 2), 0.01));

const area = (loop: readonly Point[]): number =>
  loop.reduce((sum, [x, y], i) => {
    const [nextX, nextY] = loop[(i + 1) % loop.length] as Point;
    return sum + (x * nextY - nextX * y) / 2;
  }, 0);

describe('a rounded outline moved inward', () => {
  it('past the radius of its corners it is the sharp rectangle inside', () => {
    // 200 − 2·25 by 100 − 2·25; the last edges to vanish may cut a corner by their own length.
    const inside = insetPolygon(rounded(20), 25);
    expectWithin(area(inside ?? []), 150 * 50, 0.5);
  });

  it('short of it the corners stay round', () => {
    const inside = insetPolygon(rounded(30), 10);
    // 180 × 80 with corners of R 20.
    expectWithin(area(inside ?? []), 180 * 80 - (4 - Math.PI) * 400, 2);
  });

  it('closes up at half its width', () => {
    expect(insetPolygon(rounded(20), 50.5)).toBeNull();
  });
});

describe('the example with a drawn rail', () => {
  it('is not mirrored, by the port and by a dowel', async () => {
    const file = fileURLToPath(new URL('../../packages/pan-cli/examples/drawn-rail.yaml', import.meta.url));
    const read = await readDesignFile(file);
    expect(read.design.engine.railHoles).toHaveLength(30);
    const { checks } = checkDesign(read);
    expect(checks.find(({ id }) => id === 'rail_side')?.status).toBe('pass');
    expect(
      checks.find(({ id }) => id === 'flange_hole_edge' || /hole to edge/.test(id))?.status ?? 'pass',
    ).toBe('pass');
  });
});

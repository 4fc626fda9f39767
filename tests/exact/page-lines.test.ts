import { creaseLines } from 'pan-cli/page/crease-lines.js';
import { surfaceEdges } from 'pan-cli/page/surface-edges.js';
import { rowAt } from 'pan-cli/page/surge-oil.js';
import { describe, expect, it } from 'vitest';

const cube = {
  name: 'cube',
  points: [0, 0, 0, 10, 0, 0, 10, 10, 0, 0, 10, 0, 0, 0, 10, 10, 0, 10, 10, 10, 10, 0, 10, 10],
  triangles: [
    [0, 2, 1, 0, 3, 2],
    [4, 5, 6, 4, 6, 7],
    [0, 1, 5, 0, 5, 4],
    [1, 2, 6, 1, 6, 5],
    [2, 3, 7, 2, 7, 6],
    [3, 0, 4, 3, 4, 7],
  ].flat(),
};

describe('lines that the page draws', () => {
  it('are the twelve edges of a cube, none across its faces', () => {
    const lines = creaseLines(cube);
    expect(lines.length).toBe(12);
    // Every edge of a cube runs along one axis.
    for (const [a, b] of lines) expect([0, 1, 2].filter((k) => a[k] !== b[k]).length).toBe(1);
  });

  it('are the four sides of a square sheet, which ends there', () => {
    expect(creaseLines({ ...cube, triangles: [0, 2, 1, 0, 3, 2] }).length).toBe(4);
  });

  it('mark oil’s surface and neither wall nor floor', () => {
    const outline = [
      [0, 0],
      [10, 0],
      [10, 8],
      [0, 8],
    ] as const;
    const wet = [
      [0, 0],
      [10, 0],
      [10, 3],
      [0, 5],
    ] as const;
    const room = { cell: 4, outline };
    expect(surfaceEdges({ cell: 4, pool: 0, outline: wet }, [room])).toEqual([
      [
        [10, 3],
        [0, 5],
      ],
    ]);
    expect(surfaceEdges({ cell: 4, pool: 0, outline }, [room])).toEqual([]);
  });

  it('take the last row of a series that is not after a time', () => {
    const times = [0, 0.5, 1, 2];
    expect([-1, 0, 0.49, 0.5, 1.9, 2, 9].map((t) => rowAt(times, t))).toEqual([0, 0, 0, 1, 2, 3, 3]);
  });
});

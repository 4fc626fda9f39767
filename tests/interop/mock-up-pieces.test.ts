import {
  hollowSolid,
  insideSolid,
  type Mesh,
  meshVolume,
  mockUpPieces,
  outsideSolid,
  PIN,
  writeStl,
} from 'pan-core/drawing/index.js';
import { earTriangles } from 'pan-core/geometry/index.js';
import { buildPan } from 'pan-core/pan/index.js';
import { panSkin } from 'pan-core/weld/index.js';
import { describe, expect, it } from 'vitest';
import { expectWithin } from '../numbers.js';
import { randomPan } from '../random-design.js';
import { stepDesign } from '../sample-design.js';
import { checkSolid, hasChecker, MISSING_CHECKER, NO_FAULTS, stlVolume, unpaired } from './stl-checker.js';
import { pans } from './stl-pans.js';

const checker = hasChecker();
const BED = [220, 220, 250] as const;
const WALL = 4;
// Coordinates in 32 bits: see stl.test.ts; sheet is a hundredth of the room, so ten times the share.
const FLOAT32 = 1e-6;

const bound = (mesh: Mesh, axis: 0 | 1 | 2, pick: (...v: number[]) => number): number =>
  mesh.points.reduce((found, p) => pick(found, p[axis]), mesh.points[0]?.[axis] ?? Number.NaN);

/** A regular polygon of 24 corners times the depth: what one blind hole takes. */
const HOLE = 12 * Math.sin((2 * Math.PI) / 24) * PIN.radius ** 2 * PIN.depth;

describe.each(pans)('the sheet of the pan, and its mock-up in pieces: %s', (_, design) => {
  const skin = panSkin(buildPan(design));
  const { thickness } = design.pan.sheet;
  const sheet = hollowSolid(skin, 0, thickness);
  const shell = hollowSolid(skin, thickness - WALL, thickness);
  const pieces = mockUpPieces(shell, BED, WALL);

  it('is what lies between outside and inside', () => {
    const between = meshVolume(outsideSolid(skin, thickness)) - meshVolume(insideSolid(skin));
    expectWithin(meshVolume(sheet), between, 1e-9 * between, 'volume, mm³');
    expect(unpaired(writeStl(sheet, 'sheet'))).toEqual([]);
  });

  it('has no fault for an independent checker, each piece one solid', (ctx) => {
    if (!checker) ctx.skip(MISSING_CHECKER);
    for (const mesh of [sheet, ...pieces.map((piece) => piece.mesh)]) {
      const found = checkSolid(writeStl(mesh, 'piece'));
      expect(found.faults).toEqual(NO_FAULTS);
      expect(found.parts).toBe(1);
    }
  });

  it('every piece fits the bed and is pinned, and together they are the whole less the pins’ holes', () => {
    for (const { mesh, pins, name } of pieces) {
      for (const axis of [0, 1, 2] as const)
        expect(bound(mesh, axis, Math.max) - bound(mesh, axis, Math.min), name).toBeLessThanOrEqual(
          BED[axis],
        );
      expect(pins, name).toBeGreaterThan(1);
      expect(unpaired(writeStl(mesh, name)), name).toEqual([]);
    }
    const whole = meshVolume(shell);
    const holes = pieces.reduce((sum, { pins }) => sum + pins, 0) * HOLE;
    const sum = pieces.reduce((total, { mesh, name }) => total + stlVolume(writeStl(mesh, name)), 0);
    expectWithin(sum + holes, whole, FLOAT32 * whole, 'volume, mm³');
  });
});

describe('closed forms', () => {
  // Five plates of 3 mm, mitred: the outside 206 × (306 × 203 + 400 × 53) less the inside 200 × (300 × 200 + 400 × 50).
  it('the sheet of the sharp step', () => {
    const sheet = hollowSolid(panSkin(buildPan(stepDesign())), 0, 3);
    const wanted = 206 * (306 * 203 + 400 * 53) - 200 * (300 * 200 + 400 * 50);
    expectWithin(meshVolume(sheet), wanted, 1e-3, 'volume, mm³');
  });

  it('a square with two square holes is its area in triangles, every corner on an edge kept', () => {
    const square = (x: number, y: number, s: number): [number, number][] => [
      [x, y],
      [x + s / 2, y],
      [x + s, y],
      [x + s, y + s],
      [x, y + s],
    ];
    const points = [...square(0, 0, 100), ...square(10, 10, 20), ...square(60, 50, 30)];
    const loops = [
      [0, 1, 2, 3, 4],
      [9, 8, 7, 6, 5],
      [14, 13, 12, 11, 10],
    ];
    const triangles = earTriangles(points, loops);
    const area = triangles.reduce((sum, [i, j, k]) => {
      const [a, b, c] = [points[i], points[j], points[k]] as [number, number][] as [
        [number, number],
        [number, number],
        [number, number],
      ];
      return sum + ((b[0] - a[0]) * (c[1] - a[1]) - (c[0] - a[0]) * (b[1] - a[1])) / 2;
    }, 0);
    expectWithin(area, 100 * 100 - 20 * 20 - 30 * 30, 1e-9, 'area, mm²');
    // Corners + 2 · holes − 2.
    expect(triangles).toHaveLength(15 + 4 - 2);
    expect(new Set(triangles.flat()).size).toBe(15);
  });
});

it('forty random pans come apart in closed pieces that add up (seeds 500 to 539)', () => {
  for (let seed = 500; seed < 540; seed++) {
    const shell = hollowSolid(panSkin(randomPan(seed)), -1, 3);
    const pieces = mockUpPieces(shell, BED, WALL);
    const holes = pieces.reduce((sum, { pins }) => sum + pins, 0) * HOLE;
    const sum = pieces.reduce((total, { mesh }) => total + meshVolume(mesh), 0);
    const whole = meshVolume(shell);
    expectWithin(sum + holes, whole, FLOAT32 * whole, `seed ${seed}, volume, mm³`);
    for (const { mesh, name } of pieces)
      expect(unpaired(writeStl(mesh, name)), `seed ${seed}, ${name}`).toEqual([]);
  }
});

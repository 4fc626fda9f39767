import { halfSpacesOf, liftPoint } from 'pan-core/geometry/index.js';
import { buildPan, type OuterSolid, outerSolids, type PanModel } from 'pan-core/pan/index.js';
import { describe, expect, test } from 'vitest';
import { seedOr } from '../dice.js';
import { randomPan } from '../random-design.js';
import { sampleDesign } from '../sample-design.js';

type P = readonly [number, number, number];

const SHEET = new Set(['belly', 'side left', 'side right', 'wing', 'notch']);

/** A flat convex piece of sheet seen from the oil, with the normal that points out of it. */
interface Piece {
  readonly owner: string;
  readonly corners: readonly P[];
  readonly out: P;
}

const sheetOf = (model: PanModel): readonly Piece[] =>
  model.bare
    .filter(({ face }) => SHEET.has(face.tag.owner))
    .flatMap(({ face, pieces }) => {
      const plane = model.table.planes[face.plane]!;
      const [x, y, z] = plane.normal;
      const out: P = [x * face.side, y * face.side, z * face.side];
      return pieces.map((piece) => ({
        owner: face.tag.owner,
        out,
        corners: piece.map((p) => liftPoint(plane, p)),
      }));
    });

/** How far a point stands outside a union of convex solids by its planes: at most 0 inside. */
const outsideBy = (solids: readonly OuterSolid[]) => {
  const spaces = solids.filter((s) => s.role === 'shell').map(halfSpacesOf);
  return (p: P): number =>
    Math.min(
      ...spaces.map((list) =>
        Math.max(...list.map(({ normal: n, offset }) => n[0] * p[0] + n[1] * p[1] + n[2] * p[2] - offset)),
      ),
    );
};

const middleOf = (loop: readonly P[]): P => {
  const at = (k: 0 | 1 | 2): number => loop.reduce((sum, p) => sum + p[k] / loop.length, 0);
  return [at(0), at(1), at(2)];
};
const shift = (p: P, n: P, by: number): P => [p[0] + n[0] * by, p[1] + n[1] * by, p[2] + n[2] * by];
const words = (p: P): string => p.map((v) => v.toFixed(2)).join(', ');

/** Chords of the oil side's bends stand up to 0.05 mm in front of the sheet. */
const CHORD = 0.06;

const expectHeld = (model: PanModel, what: string): number => {
  const out = outsideBy(outerSolids(model.design, model.profile));
  const thickness = model.design.pan.sheet.thickness;
  const pieces = sheetOf(model);
  for (const piece of pieces)
    for (const p of [...piece.corners, middleOf(piece.corners)]) {
      const bare = out(shift(p, piece.out, thickness - CHORD));
      expect(bare, `${what}: ${piece.owner} at ${words(p)} is bare`).toBeLessThan(1e-6);
    }
  return pieces.length;
};

describe('the outside holds the sheet', () => {
  test('of the sample', () => {
    expect(expectHeld(buildPan(sampleDesign()), 'sample')).toBeGreaterThan(20);
  });

  test('of random pans with wings and notches', () => {
    const seed = seedOr(900);
    let [wings, notches] = [0, 0];
    for (let i = 0; i < 60; i++) {
      const model = randomPan(seed + i);
      wings += model.design.pan.wings.length;
      notches += model.design.pan.notches.length;
      expectHeld(model, `seed ${seed + i}`);
    }
    expect(wings).toBeGreaterThan(10);
    expect(notches).toBeGreaterThan(3);
  });
});

describe('the outside is no thicker than the sheet', () => {
  test.each<[string, () => PanModel]>([
    ['of the sample', () => buildPan(sampleDesign())],
    [
      'round a notch in a wall',
      () =>
        buildPan(
          sampleDesign((d) => {
            d.pan.notches = [{ kind: 'box', name: 'notch', min: [100, 60, -150], max: [180, 200, -110] }];
          }),
        ),
    ],
    [
      'round a notch in the floor',
      () =>
        buildPan(
          sampleDesign((d) => {
            d.pan.notches = [{ kind: 'box', name: 'notch', min: [200, -40, -200], max: [260, 40, -140] }];
            d.baffles = [];
          }),
        ),
    ],
    [
      'round a wedge',
      () =>
        buildPan(
          sampleDesign((d) => {
            const triangle: [[number, number], [number, number], [number, number]] = [
              [60, -200],
              [140, -200],
              [60, -120],
            ];
            d.pan.notches = [{ kind: 'wedge', name: 'wedge', triangle, along: 'y', from: 20, to: 200 }];
            d.baffles = [];
            d.pan.wings = [];
            d.drain = null;
          }),
        ),
    ],
  ])('%s', (_, make) => {
    const model = make();
    const out = outsideBy(outerSolids(model.design, model.profile));
    const thickness = model.design.pan.sheet.thickness;
    let checked = 0;
    for (const { corners, out: normal, owner } of sheetOf(model)) {
      const p = middleOf(corners);
      // Near the rail and along a bend the sheet is not alone.
      const shortest = Math.min(
        ...corners.map((a, i) => {
          const b = corners[(i + 1) % corners.length]!;
          return Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);
        }),
      );
      if (p[2] > -8 || shortest < 8) continue;
      const beyond = out(shift(p, normal, thickness + 1e-6));
      expect(beyond, `${owner} at ${words(p)} is too thick`).toBeGreaterThan(0);
      checked++;
    }
    expect(checked).toBeGreaterThan(6);
  });
});

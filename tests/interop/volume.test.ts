import type { Design } from 'pan-core/design/index.js';
import {
  createBody,
  createMeasure,
  createOriented,
  heightOf,
  measureCells,
  orient,
} from 'pan-core/oil/index.js';
import type { PanModel } from 'pan-core/pan/index.js';
import { expect, test } from 'vitest';
import { diceFrom, seedOr } from '../dice.js';
import { tellWorst } from '../published/accuracy.js';
import { randomPan } from '../random-design.js';
import { boxOf, manifoldOf, unionOf, volumeByJscad } from './volume-kernels.js';
import { type Corners, formedLine, sharpLine, solidsOf } from './volume-solids.js';

const SEED = seedOr(71);
const COUNT = 100;

/** Parts of the volume. Both libraries count in double precision where no mesh goes in or comes out. */
const JSCAD = 1e-12;
const MANIFOLD = 1e-12;
/** mm: how far the library’s chords stand off a fold’s arc at most. */
const CHORD = 0.05;

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);
const pans = Array.from({ length: COUNT }, (_, i) => randomPan(SEED * 1000 + i));

const sharpOf = ({ sharp }: PanModel): number => sharp.shallow + sharp.sump;
const formedOf = (model: PanModel): number =>
  sum(model.cells.map((cell, i) => (cell.zone === 'crankcase' ? 0 : model.volumes[i]!)));

const worst = (of: (model: PanModel) => number | null): number => {
  const all = pans.flatMap((model) => of(model) ?? []);
  expect(all.length).toBeGreaterThan(COUNT / 5);
  return Math.max(...all);
};

const apart = (a: number, b: number): number => Math.abs(a - b) / b;

/** The pan by manifold-3d: slabs and wings put together, notches cut out. */
const solidOf = (design: Design, solids: readonly Corners[]) => {
  const whole = unionOf(solids.map(manifoldOf));
  const boxes = design.pan.notches.flatMap((notch) =>
    notch.kind === 'box' ? [boxOf(notch.min, notch.max)] : [],
  );
  return boxes.length === 0 ? whole : whole.subtract(unionOf(boxes));
};

test(`sharp pans without notches measure as @jscad/modeling does to ${JSCAD} (seed ${SEED}, ${COUNT} pans)`, () => {
  const off = worst((model) => {
    if (model.design.pan.notches.length > 0) return null;
    return apart(sum(solidsOf(model.design, sharpLine(model.design)).map(volumeByJscad)), sharpOf(model));
  });
  tellWorst(
    'Volume of a pan with sharp corners, as a share of itself',
    off,
    JSCAD,
    '1',
    `@jscad/modeling, those of ${COUNT} random pans that have no notch`,
  );
  expect(off).toBeLessThanOrEqual(JSCAD);
});

test(`sharp pans, notches cut, measure as manifold-3d does to ${MANIFOLD} (seed ${SEED}, ${COUNT} pans)`, () => {
  const off = worst((model) =>
    apart(solidOf(model.design, solidsOf(model.design, sharpLine(model.design))).volume(), sharpOf(model)),
  );
  tellWorst(
    'Volume of a pan with its notches cut out, as a share of itself',
    off,
    MANIFOLD,
    '1',
    `manifold-3d, ${COUNT} random pans`,
  );
  expect(off).toBeLessThanOrEqual(MANIFOLD);
});

test(`folded pans measure as both do, to the ${CHORD} mm of the chords (seed ${SEED}, ${COUNT} pans)`, () => {
  const off = worst((model) => {
    const { design, profile } = model;
    if (design.pan.notches.length > 0) return null;
    const solids = solidsOf(design, formedLine(design));
    const width = 2 * Math.max(...solids.flatMap((corners) => corners.map((p) => Math.abs(p[1]))));
    const arcs = sum(profile.corners.map((corner) => corner.rho * Math.abs(corner.turn)));
    // Between an arc and its chords lie two thirds of the distance times the length.
    const allowed = (2 / 3) * CHORD * arcs * width + JSCAD * formedOf(model);
    // Slabs that only touch are measured one by one: whether a union merges them is the other kernel’s affair.
    const second = sum(solids.map((corners) => manifoldOf(corners).volume()));
    return Math.max(
      Math.abs(sum(solids.map(volumeByJscad)) - formedOf(model)) / allowed,
      Math.abs(second - formedOf(model)) / (allowed + MANIFOLD * formedOf(model)),
    );
  });
  expect(off).toBeLessThanOrEqual(1);
});

test(`oil under a tilted plane measures as manifold-3d trims it (seed ${SEED}, ${COUNT} pans)`, () => {
  const dice = diceFrom(SEED);
  const off = worst((model) => {
    const { design } = model;
    if (design.pan.joints.welded.length < design.pan.floor.length) return null;
    const [x, y] = [dice.between(-1.2, 1.2), dice.between(-1.2, 1.2)];
    const size = Math.hypot(x, y, 1);
    const up = [x / size, y / size, 1 / size] as const;
    const oriented = orient(createOriented(createBody({ ...model, shares: model.cells.map(() => 1) })), up);
    const below = model.cells.flatMap((cell, i) => (cell.zone === 'crankcase' ? [] : [i]));
    const at = [dice.between(100, 400), dice.between(-60, 60), -dice.between(30, 120)] as const;
    const volume = measureCells(oriented, below, heightOf(oriented, at), createMeasure()).volume;
    const solid = solidOf(design, solidsOf(design, sharpLine(design)));
    const height = up[0] * at[0] + up[1] * at[1] + up[2] * at[2];
    const trimmed = solid.trimByPlane([-up[0], -up[1], -up[2]], -height).volume();
    return Math.abs(trimmed - volume) / formedOf(model);
  });
  tellWorst(
    'Oil under a tilted plane, as a share of the pan',
    off,
    MANIFOLD,
    '1',
    `manifold-3d, ${COUNT} random pans`,
  );
  expect(off).toBeLessThanOrEqual(MANIFOLD);
});

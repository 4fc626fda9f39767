import Module from 'manifold-3d';
import { pathPoints, polygonArea } from 'pan-core/geometry/index.js';
import { bendRule, shopFindings, treeParts } from 'pan-core/sheet/index.js';
import { expect, test } from 'vitest';
import { expectWithin } from '../numbers.js';
import { treeErrors } from './tree-check.js';
import { type TreeCase, treeCase } from './tree-design.js';

const SEED = Number(process.env.PAN_SEED ?? 90210);
const COUNT = Number(process.env.PAN_COUNT ?? 40);

const cases: readonly TreeCase[] = (() => {
  const out: TreeCase[] = [];
  for (let seed = SEED; out.length < COUNT; seed++) {
    const found = treeCase(seed);
    if (found !== null) out.push(found);
  }
  return out;
})();
const made = cases.filter((c) => c.refused === null);

test(`pans folded along random edges close, measure and mirror (seed ${SEED}, ${COUNT} pans)`, () => {
  let [compared, handed] = [0, 0];
  for (const one of made) {
    const errors = treeErrors(one);
    const what = (name: string): string => `seed ${one.seed} ${name}`;
    expectWithin(errors.closing, 0, 1e-6, what('closing'));
    expectWithin(errors.runs, 0, 1e-9, what('runs'));
    expectWithin(errors.widths, 0, 1e-9, what('widths'));
    expectWithin(errors.area, 0, 1e-12, what('area'));
    expect(errors.beyondReported, what('edges across bends')).toBeLessThan(1e-9);
    expectWithin(errors.mirror, 0, 1e-6, what('mirror'));
    expect(errors.overlap, what('overlap')).toBeLessThan(0.01);
    compared += errors.compared;
    handed += errors.handed;
  }
  expect(compared).toBeGreaterThan(COUNT);
  // Without parts that differ from their image the mirror would show nothing.
  expect(handed).toBeGreaterThan(COUNT);
});

test(`cut lines close, run the right way and never cross (seed ${SEED})`, () => {
  for (const { design, profile, seed } of made) {
    const parts = treeParts({ design, profile, rule: bendRule(design), notches: [], plates: [] });
    for (const part of parts)
      expect(
        shopFindings(part).filter((f) => f.severity === 'fault'),
        `seed ${seed} ${part.name}`,
      ).toEqual([]);
  }
});

test(`what cannot be folded is refused with a reason (seed ${SEED})`, () => {
  const refused = cases.flatMap((c) => (c.refused === null ? [] : [c.refused]));
  expect(made.length).toBeGreaterThan(COUNT / 3);
  for (const message of refused)
    expect(message).toMatch(/want the same .* of sheet|need .* mm and it is|long at one place/);
});

/** Another program's union of the pieces: where two overlap it is smaller than their sum. */
test(`no piece of a blank lies on another, by another program's union (seed ${SEED})`, async () => {
  const kernel = await Module();
  kernel.setup();
  const { CrossSection } = kernel;
  for (const { trees, seed } of made) {
    for (const blank of trees.blanks) {
      const flat = (loop: Parameters<typeof pathPoints>[0]) => pathPoints(loop, 0.001).slice(0, -1);
      const pieces = [
        ...blank.leaves.map((i) => blank.leafLoops.get(i)!.map(flat)),
        ...blank.folds.flatMap(({ zone, allowance }) => (allowance > 0 ? [[[...zone]]] : [])),
      ];
      const sum = pieces.flat().reduce((s, loop) => s + Math.abs(polygonArea(loop)) * sign(loop, pieces), 0);
      const sections = pieces.map(
        (loops) =>
          new CrossSection(
            loops.map((loop) => loop.map(([x, y]) => [x, y] as [number, number])),
            'EvenOdd',
          ),
      );
      const union = CrossSection.union(sections).area();
      // That program rounds places to its own grid; shared sheet of a thumbnail's size is caught.
      expectWithin(union, sum, 0.5, `seed ${seed} ${blank.leaves.map((i) => trees.leaves[i]!.name).join()}`);
    }
  }
});

/** Holes in a leaf take away; every first loop adds. */
const sign = (
  loop: readonly (readonly [number, number])[],
  pieces: readonly (readonly (readonly (readonly [number, number])[])[])[],
): 1 | -1 => (pieces.some((loops) => loops[0] === loop) ? 1 : -1);

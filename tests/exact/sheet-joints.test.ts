import type { Design } from 'pan-core/design/index.js';
import { PanError } from 'pan-core/errors/index.js';
import { buildPan, floorProfile, panelsOf, platesOf } from 'pan-core/pan/index.js';
import { bendRule, cutParts, type Part, treeParts } from 'pan-core/sheet/index.js';
import { panSeams } from 'pan-core/weld/index.js';
import { describe, expect, test } from 'vitest';
import { expectWithin } from '../numbers.js';
import { trough as plainTrough } from '../sheet-trial.js';

type Pairs = readonly (readonly [string, string])[];

const trough = (fold: Pairs, weld: Pairs = []): Design =>
  plainTrough((d) => {
    Object.assign(d.pan.joints, { fold, weld });
  });
const SIDES: Pairs = [
  ['sump floor', 'side left'],
  ['sump floor', 'side right'],
];
const BEND = (Math.PI / 2) * (3 + 0.43 * 2);
/** What one bend takes off two inside lengths: 2R − BA. */
const TAKEN = 2 * 3 - BEND;

const trees = (design: Design): readonly Part[] =>
  treeParts({ design, profile: floorProfile(design), rule: bendRule(design), notches: [], plates: [] });

const refusal = (fold: Pairs, weld: Pairs = []): string => {
  try {
    trees(trough(fold, weld));
  } catch (error) {
    if (error instanceof PanError) return error.problems.map((p) => `${p.message} ${p.advice}`).join(' ');
    throw error;
  }
  return '';
};

describe('a trough folded from one cross', () => {
  test('is one piece, as long and as wide as its inside lengths less what four bends take', () => {
    const [part, ...rest] = trees(trough(SIDES));
    expect(rest).toEqual([]);
    expectWithin(part!.flat[0], 120 + 400 + 120 - 2 * TAKEN, 1e-9, 'length');
    expectWithin(part!.flat[1], 120 + 200 + 120 - 2 * TAKEN, 1e-9, 'width');
    expect(part!.folds.map((f) => f.direction)).toEqual(['up', 'up', 'up', 'up']);
  });

  test('leaves four upright seams, and nothing along the floor', () => {
    const model = buildPan(trough(SIDES));
    const shell = panSeams(model).filter((s) => s.step === 'shell');
    expect(shell.map((s) => s.name).sort()).toEqual([
      'front wall to side left',
      'front wall to side right',
      'rear wall to side left',
      'rear wall to side right',
    ]);
    // Each is as long as the pan is deep, within the chords of the floor's round.
    for (const seam of shell) expectWithin(seam.length, 120, 6, seam.name);
    const parts = cutParts(model.design, model.profile, platesOf(model), panelsOf(model));
    expect(parts.map((p) => p.name)).toContain(shell[0]!.between[0]);
  });
});

describe('what cannot be folded says why', () => {
  test('a ring of folds', () => {
    expect(refusal([...SIDES, ['front wall', 'side left']])).toMatch(/close a ring.*pan\.joints\.weld/);
  });
  test('a face that is none, with the nearest one', () => {
    expect(refusal([['sump flor', 'side left']])).toMatch(
      /no face called "sump flor".*Did you mean sump floor/,
    );
  });
  test('faces that share no edge', () => {
    expect(refusal([['side right', 'side left']])).toMatch(/share no edge/);
  });
  test('a corner of the belly, which another key decides', () => {
    expect(refusal([], [['sump floor', 'front wall']])).toMatch(/pan\.joints\.welded/);
  });
});

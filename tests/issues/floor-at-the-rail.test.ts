import { PanError } from 'pan-core/errors/index.js';
import { floorProfile } from 'pan-core/pan/index.js';
import { expect, it } from 'vitest';
import { sampleDesign } from '../sample-design.js';

const problemsOf = (floor: readonly (readonly [number, number])[]) => {
  try {
    floorProfile(
      sampleDesign((d) => {
        d.pan.floor = floor.map(([x, down]) => [x, down]);
      }),
    );
  } catch (error) {
    if (error instanceof PanError) return error.problems;
    throw error;
  }
  return [];
};

it('a floor that runs out at the rail has no end wall and no corner there, and every number is one', () => {
  const profile = floorProfile(
    sampleDesign((d) => {
      d.pan.floor = [
        [655, 0],
        [320, 58],
        [320, 165],
        [32, 172],
      ];
    }),
  );
  expect(profile.corners[0]).toEqual({ at: [655, -0], index: 0, turn: 0, folded: false, rho: 0, setback: 0 });
  const numbers = JSON.stringify(profile);
  // JSON writes NaN as null.
  expect(numbers).not.toContain('null');
});

it('a floor above the rail is refused', () => {
  for (const down of [-5, Number.NaN]) {
    const problems = problemsOf([
      [655, down],
      [320, 58],
      [32, 172],
    ]);
    expect(problems).toMatchObject([{ code: 'shape-floor', path: ['pan', 'floor_inside', 0] }]);
  }
});

it('a floor point given twice is refused: the piece between has no direction', () => {
  const problems = problemsOf([
    [655, 40],
    [320, 58],
    [320, 58],
    [32, 172],
  ]);
  expect(problems).toMatchObject([{ code: 'shape-floor', path: ['pan', 'floor_inside', 2] }]);
});

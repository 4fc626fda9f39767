import { expect, test } from 'vitest';
import { type Dice, diceFrom, seedOr } from '../../dice.js';
import { allowed, type Comparison, compare, type Fineness, line, STATES, type State } from './compare.js';
import { prismaticSketch, type Sketch, wideSketch } from './sketch.js';

const SEED = seedOr(41);
const MOST_TRIES = 4;

/** Random pans of one kind, numbered from the seed, until `count` of them can be built. */
const gather = (
  kind: string,
  sketch: (dice: Dice) => Sketch,
  count: number,
  fineness: Fineness,
): readonly Comparison[] => {
  const found: Comparison[] = [];
  for (let k = 0; found.length < count && k < MOST_TRIES * count; k++) {
    const seed = SEED * 1000 + k;
    const one = compare(`${kind} pan ${seed}`, sketch(diceFrom(seed)), fineness);
    if (one !== null) found.push(one);
  }
  return found;
};

const differences = (all: readonly Comparison[]): readonly number[] =>
  [0, 1, 2].map((grid) => {
    const each = all.flatMap((one) =>
      STATES.map((state) => Math.abs(one.states[state].grids[grid]! - one.states[state].library) / one.oil),
    );
    return each.reduce((sum, value) => sum + value, 0) / each.length;
  });

test(`the mouth's pool agrees with a brute-force grid on 52 random pans (seed ${SEED})`, () => {
  const all = [
    ...gather('flat', prismaticSketch, 48, { cells: [8, 4, 2], steps: [10, 20, 40] }),
    ...gather('wide', wideSketch, 4, { cells: [16, 8, 4], steps: [6, 12, 18] }),
  ];
  const agrees = (one: Comparison, state: State): boolean => {
    const { library, grids } = one.states[state];
    return Math.abs(grids[2]! - library) <= allowed(one, state);
  };
  const off = all.flatMap((one) =>
    STATES.filter((state) => !agrees(one, state)).map((state) => ({ one, state })),
  );
  // A grid cannot tell which way pools go that change when a sill moves by one cube: told apart, and few.
  const differing = new Set([...new Set(off.map(({ one }) => one))].filter((one) => one.hangsOnASill()));
  const apart = off.filter(({ one }) => differing.has(one));
  const means = differences(all.filter((one) => !differing.has(one)));
  const percent = means.map((value) => `${(100 * value).toFixed(3)} %`).join(', ');
  const told = [
    `seed ${SEED}: ${all.length} pans, ${all.filter((one) => one.pools > 1).length} with more than one pool after the manoeuvre`,
    `mean difference in parts of the oil, the grid halved twice: ${percent}`,
    `${differing.size} differ, change pools when a sill moves by one cube, and are told apart:`,
    ...apart.map(({ one, state }) => `  ${line(one, state)}`),
  ];
  process.stdout.write(`${told.join('\n')}\n`);
  expect(off.filter(({ one }) => !differing.has(one)).map(({ one, state }) => line(one, state))).toEqual([]);
  expect(all.length).toBeGreaterThanOrEqual(50);
  expect(differing.size).toBeLessThanOrEqual(all.length / 10);
  expect(means[1]!).toBeLessThan(means[0]!);
  expect(means[2]!).toBeLessThan(means[1]!);
}, 600_000);

import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';
import { compared, type SmallProblem } from '../known-best.js';

const here = (path: string): string => fileURLToPath(new URL(path, import.meta.url));
const text = (example: string): string =>
  readFileSync(here(`../../packages/pan-cli/examples/${example}.yaml`), 'utf8');
const problems: readonly SmallProblem[] = JSON.parse(readFileSync(here('../size-problems.json'), 'utf8'));

/** Two of the lightest; `node tests/bench/size-best.mjs` takes all. */
const FEW = [7, 9];

it.each(FEW.map((number) => problems[number - 1] as SmallProblem))(
  '$example, $goal over $free is the best of every step, and passes on its own',
  (problem) => {
    const { gap, passes, places } = compared(problem, text(problem.example));
    expect(places).toBeGreaterThan(30);
    expect(passes).toBe(true);
    // Every whole step of the values was tried, in order of cost, until one passed.
    expect(gap).toBeLessThanOrEqual(1e-3);
  },
);

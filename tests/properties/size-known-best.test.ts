import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import {
  checkDesign,
  type FreeWish,
  type GoalName,
  posed,
  readDesign,
  requestFor,
  runSearch,
  sizedDesign,
  verdictAt,
} from 'pan-core';
import { dataAt } from 'pan-core/size/problem.js';
import { expect, it } from 'vitest';
import { parse } from 'yaml';

const raw: unknown = parse(
  readFileSync(
    fileURLToPath(new URL('../../packages/pan-cli/examples/two-wings.yaml', import.meta.url)),
    'utf8',
  ),
);
const wish = (what: string, from: number, to: number, step: number): FreeWish => ({ what, from, to, step });

/** Best of every whole step, each asked about on its own: the search has no part in it. */
const PROBLEMS: readonly (readonly [GoalName, FreeWish])[] = [
  ['most oil', wish('fill', 7.6e6, 8.8e6, 1e5)],
  ['least metal', wish('left wing reach', 36, 60, 3)],
];

it.each(PROBLEMS)(
  '%s over %j is the best of every step, and passes on its own',
  (goal, one) => {
    const pose = posed(raw);
    const request = requestFor(goal, [one]);
    const problem = pose(request);
    const count = Math.round(((one.to ?? 0) - (one.from ?? 0)) / (one.step ?? 1));
    const best = Array.from({ length: count + 1 }, (_, k) =>
      verdictAt(problem, { at: [k / count], enough: Number.POSITIVE_INFINITY }),
    )
      .filter(({ miss }) => miss === 0)
      .reduce((a, { cost }) => Math.min(a, cost), Number.POSITIVE_INFINITY);
    const found = runSearch(sizedDesign(problem), ({ request: asked, questions }) =>
      questions.map((question) => verdictAt(pose(asked), question)),
    );
    expect(best).toBeLessThan(Number.POSITIVE_INFINITY);
    expect(found.best.verdict.miss).toBe(0);
    // Within 0.1 % of the best; the search may also land between the steps of the enumeration.
    expect(found.best.verdict.cost).toBeLessThanOrEqual(best + 1e-3 * Math.abs(best) + 1e-9);
    expect(checkDesign(readDesign(dataAt(problem, found.best.at))).counts.fail).toBe(0);
  },
  60_000,
);

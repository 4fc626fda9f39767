import {
  checkDesign,
  type GoalName,
  posed,
  readDesign,
  requestFor,
  runSearch,
  sizedDesign,
  verdictAt,
  withEdits,
} from 'pan-core';
import { dataAt } from 'pan-core/size/problem.js';
import { parse } from 'yaml';

/** A sizing small enough for every whole step of its values to be tried: lengths in mm, fills in L. */
export interface SmallProblem {
  readonly example: string;
  readonly goal: GoalName;
  readonly free: Readonly<Record<string, readonly [from: number, to: number, step: number]>>;
}

/** What was found, beside the best of every step, both in the goal's unit. */
export interface Comparison {
  readonly found: number;
  readonly best: number;
  /** How much worse the answer is, as a share of the best. */
  readonly gap: number;
  readonly passes: boolean;
  readonly tried: number;
  readonly places: number;
}

/** An example with half its cases and none of the obstacles, so that one design takes little time. */
const light = (text: string): unknown => {
  const raw = parse(text);
  return withEdits(raw, [
    { path: ['chassis', 'obstacles'], value: [] },
    { path: ['manoeuvres'], value: raw.manoeuvres.slice(0, 2) },
    { path: ['prices'], value: { sheet_per_kg: 7.5, cut_per_metre: 2.4 } },
  ]);
};

/** Every combination of whole steps, from 0 to 1 in each range. */
const grid = (counts: readonly number[]): readonly (readonly number[])[] =>
  counts.reduce<readonly (readonly number[])[]>(
    (all, count) => all.flatMap((at) => Array.from({ length: count + 1 }, (_, k) => [...at, k / count])),
    [[]],
  );

/**
 * Sizes, and finds the best by trying all there are: in order of their cost, until the first that passes. The
 * search has no part in it.
 *
 * @param text the example's file
 */
export const compared = ({ goal, free }: SmallProblem, text: string): Comparison => {
  const raw = light(text);
  const pose = posed(raw);
  const wishes = Object.entries(free).map(([what, ends]) => {
    const [from, to, step] = ends.map((end) => (what === 'fill' ? end * 1e6 : end));
    return { what, from: from ?? null, to: to ?? null, step: step ?? null };
  });
  const request = requestFor(goal, wishes, { severity: goal === 'most g' ? [1, 2] : null });
  const problem = pose(request);
  const counts = problem.freedoms.map(({ from, to, step }) => Math.round((to - from) / step));
  const costs = grid(counts).map((at) => ({ at, cost: verdictAt(problem, { at, enough: -1 }).cost }));
  const best = costs
    .filter(({ cost }) => Number.isFinite(cost))
    .sort((a, b) => a.cost - b.cost)
    .find(({ at }) => verdictAt(problem, { at, enough: 0 }).miss === 0);
  let tried = 0;
  const { best: found } = runSearch(sizedDesign(problem), ({ request: asked, questions }) => {
    tried += questions.length;
    return questions.map((question) => verdictAt(pose(asked), question));
  });
  const scale = problem.goal.scale;
  const least = best?.cost ?? Number.NaN;
  return {
    found: found.verdict.cost * scale,
    best: least * scale,
    gap: (found.verdict.cost - least) / Math.abs(least),
    passes: found.verdict.miss === 0 && checkDesign(readDesign(dataAt(problem, found.at))).counts.fail === 0,
    tried,
    places: costs.length,
  };
};

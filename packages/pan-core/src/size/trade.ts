import type { Pose } from './conflict.js';
import { valuesOf } from './freedom.js';
import { figureOf, type GoalName, goalOf } from './goal.js';
import { dataAt, designAt, type SizeProblem, severityAt } from './problem.js';
import type { Kept, SizeRequest } from './request.js';
import { bestDesign, sideEffort, sizedDesign } from './search.js';
import type { Search, Trial } from './trial.js';

/** A design on the trade: what it was made best at and its figures. */
export interface TradeDesign {
  readonly sought: string;
  readonly data: unknown;
  readonly values: Readonly<Record<string, number>>;
  readonly depth_mm: number;
  /** Factor on every case's g up to which all of them still hold. */
  readonly g_factor: number;
  readonly metal_kg: number;
  readonly fill_L: number;
}

/** How far above its cases a design's reserve of g is looked for. */
const MOST_G: readonly [number, number] = [1, 3];

/**
 * Up to five designs from the shallowest to the one that stands most g, none better than another in all of
 * depth, g and metal: the three ends, and two half way in depth (the constraint method: Haimes, Lasdon and
 * Wismer 1971).
 *
 * @param tell given the designs as they stand after each
 */
export function* tradeDesigns(
  pose: Pose,
  request: SizeRequest,
  tell: (designs: readonly TradeDesign[]) => void,
): Search<readonly TradeDesign[]> {
  const found: TradeDesign[] = [];
  const seek = function* (goal: GoalName, kept: readonly Kept[], sought: string): Search<TradeDesign | null> {
    const asked: SizeRequest = {
      ...request,
      goal,
      severity: goal === 'most g' ? MOST_G : null,
      kept: [...request.kept, ...kept],
    };
    const problem = pose(asked);
    const { best } = yield* sizedDesign(problem);
    if (best.verdict.miss > 0) return null;
    const design = yield* figured(pose, problem, best, sought);
    found.push(design);
    tell(ranked(found));
    return design;
  };
  const shallow = yield* seek('least depth', [], 'least depth');
  if (shallow === null) return [];
  const hard = yield* seek('most g', [], 'most g');
  yield* seek('least metal', [], 'least metal');
  if (hard !== null && hard.depth_mm - shallow.depth_mm > 1) {
    const middle = (shallow.depth_mm + hard.depth_mm) / 2;
    const kept: readonly Kept[] = [{ goal: 'least depth', figure: middle }];
    yield* seek('most g', kept, `most g within ${middle.toFixed(0)} mm`);
    yield* seek('least metal', kept, `least metal within ${middle.toFixed(0)} mm`);
  }
  return ranked(found);
}

function* figured(pose: Pose, problem: SizeProblem, best: Trial, sought: string): Search<TradeDesign> {
  const { freedoms, request } = problem;
  const values = valuesOf(freedoms, best.at);
  const { design } = designAt(problem, best.at);
  const own = severityAt(problem, best.at);
  const figure = (goal: GoalName): number => figureOf(goalOf(goal), { design, freedoms, values });
  const pinned: SizeRequest = {
    ...request,
    goal: 'most g',
    free: freedoms
      .filter(({ kind }) => kind !== 'factor')
      .map(({ name, step }, i) => ({ what: name, from: values[i] as number, to: values[i] as number, step })),
    severity: MOST_G,
    kept: [],
  };
  const reserve = pose(pinned);
  const hardest = own > 1 ? own : severityAt(reserve, (yield* bestDesign(reserve, sideEffort(1))).best.at);
  return {
    sought,
    data: dataAt(problem, best.at),
    values: Object.fromEntries(freedoms.map(({ name }, i) => [name, values[i] as number])),
    depth_mm: figure('least depth'),
    g_factor: hardest,
    metal_kg: figure('least metal'),
    fill_L: figure('most oil'),
  };
}

const ranked = (all: readonly TradeDesign[]): readonly TradeDesign[] =>
  undominated(all).sort((a, b) => a.depth_mm - b.depth_mm);

const undominated = (all: readonly TradeDesign[]): TradeDesign[] =>
  all.filter(
    (one, i) =>
      !all.some(
        (other, k) =>
          k !== i &&
          other.depth_mm <= one.depth_mm &&
          other.g_factor >= one.g_factor &&
          other.metal_kg <= one.metal_kg &&
          (k < i ||
            other.depth_mm < one.depth_mm ||
            other.g_factor > one.g_factor ||
            other.metal_kg < one.metal_kg),
      ),
  );

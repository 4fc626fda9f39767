import { type Check, type CheckReport, checkDesign } from '../check/index.js';
import { freeze } from '../numeric/index.js';
import { bafflePlan, type LayoutTried } from './baffle-plan.js';
import { conflictIn, type Pose } from './conflict.js';
import { type Change, changesBetween } from './difference.js';
import { type Freedom, valuesOf } from './freedom.js';
import { figureOf } from './goal.js';
import type { Found } from './polish.js';
import { dataAt, designAt, type SizeProblem } from './problem.js';
import { type Relief, reliefsOf } from './relief.js';
import type { SizeRequest } from './request.js';
import { sizedDesign } from './search.js';
import { type TradeDesign, tradeDesigns } from './trade.js';
import type { Search } from './trial.js';
import { type Worth, worthOf } from './worth.js';

/** A free value in the answer, in mm, L or as a factor. */
export interface Chosen {
  readonly what: string;
  readonly unit: 'mm' | 'L' | '';
  readonly before: number;
  readonly after: number;
  readonly from: number;
  readonly to: number;
  readonly range_assumed: boolean;
  /** Whether the answer stands at an end of the range. */
  readonly at_end: boolean;
}

/** The answer to a sizing: lengths in mm, volumes in L, the goal's figure in `unit`. */
export interface SizeReport {
  readonly goal: string;
  readonly unit: string;
  /** Whether every check passes or only warns. */
  readonly passes: boolean;
  readonly figure: number | null;
  readonly figure_before: number;
  readonly chosen: readonly Chosen[];
  readonly changes: readonly Change[];
  /** Checks at their limits, nearest first. */
  readonly binds: readonly string[];
  readonly worth: readonly Worth[];
  readonly conflict: readonly string[];
  readonly reliefs: readonly Relief[];
  readonly trade: readonly TradeDesign[];
  readonly layouts: readonly LayoutTried[];
  /** Every check of the answer, or of the nearest there is. */
  readonly check: CheckReport | null;
  /** The answer as a design file's data. */
  readonly data: unknown;
}

/** What is asked of a sizing. */
export interface SizeWish {
  readonly request: SizeRequest;
  /** Also the designs along the trade of depth, g and metal. */
  readonly trade: boolean;
  /** Where baffles go in the pan as it stands, in place of sizing it. */
  readonly baffles: boolean;
}

/** The answer to a request, with what binds and what it is worth; or why there is none, and what would have to give. */
export function* sizeReport(pose: Pose, { request, trade, baffles }: SizeWish): Search<SizeReport> {
  const asked = pose(request);
  if (baffles) {
    const plan = yield* bafflePlan(pose, request, asked.design);
    const { chosen } = plan;
    const problem = chosen?.problem ?? asked;
    return freeze({ ...answerOf(problem, asked, chosen?.found ?? null), layouts: plan.tried });
  }
  const found = yield* sizedDesign(asked);
  const answer = answerOf(asked, asked, found);
  if (found.best.verdict.miss === 0) {
    return freeze({ ...answer, trade: trade ? yield* tradeDesigns(pose, request) : [] });
  }
  const conflict = yield* conflictIn(pose, request, found.seen);
  return freeze({ ...answer, conflict, reliefs: yield* reliefsOf(pose, request, conflict) });
}

const BINDS = 0.05;

const answerOf = (problem: SizeProblem, asked: SizeProblem, found: Found | null): SizeReport => {
  const { goal, freedoms, design } = problem;
  const at = found?.best.at ?? freedoms.map(() => 0);
  const values = found === null ? freedoms.map(({ now }) => now) : valuesOf(freedoms, at);
  const built = found !== null && found.best.verdict.broken === null;
  const read = built ? designAt(problem, at) : null;
  const data = built ? dataAt(problem, at) : problem.raw;
  const rows = found?.best.verdict.rows ?? [];
  return {
    goal: goal.name,
    unit: goal.unit,
    passes: found !== null && found.best.verdict.miss === 0,
    figure: read === null ? null : figureOf(goal, { design: read.design, freedoms, values }),
    figure_before: figureOf(goal, { design, freedoms, values: freedoms.map(({ now }) => now) }),
    chosen: freedoms.map((one, i) => chosenOf(one, values[i] as number)),
    changes: changesBetween(asked.raw, data),
    binds: rows
      .filter(({ id, margin, missed }) => missed || (margin < BINDS && found?.binding.has(id) === true))
      .sort((a, b) => a.margin - b.margin)
      .map(({ id }) => id),
    worth: found === null ? [] : worthOf(problem, found),
    conflict: [],
    reliefs: [],
    trade: [],
    layouts: [],
    check: read === null ? null : checkDesign(read),
    data,
  };
};

const chosenOf = ({ name, kind, now, from, to, step, rangeAssumed }: Freedom, value: number): Chosen => {
  const scale = kind === 'volume' ? 1e6 : 1;
  return {
    what: name,
    unit: kind === 'volume' ? 'L' : kind === 'factor' ? '' : 'mm',
    before: now / scale,
    after: value / scale,
    from: from / scale,
    to: to / scale,
    range_assumed: rangeAssumed,
    at_end: to > from && (value - from < step / 2 || to - value < step / 2),
  };
};

/** Title of a check of the answer, for people. */
export const titleIn = (report: SizeReport, id: string): string =>
  report.check?.checks.find((check: Check) => check.id === id)?.title ?? id.replaceAll('_', ' ');

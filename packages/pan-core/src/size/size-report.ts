import { type Check, type CheckReport, checkDesign } from '../check/index.js';
import { freeze } from '../numeric/index.js';
import { type BafflePlan, bafflePlan, type LayoutTried } from './baffle-plan.js';
import { conflictIn, type Pose } from './conflict.js';
import { type Change, changesBetween } from './difference.js';
import { type Freedom, valuesOf } from './freedom.js';
import { figureOf } from './goal.js';
import { type Found, learn } from './polish.js';
import { dataAt, designAt, type SizeProblem } from './problem.js';
import { type Relief, reliefsOf } from './relief.js';
import type { SizeRequest } from './request.js';
import { sizedDesign } from './search.js';
import { type StoppableSearch, untilStopped } from './stop.js';
import { type TradeDesign, tradeDesigns } from './trade.js';
import { bestOf, type Trial } from './trial.js';
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
  /** Designs that were looked at. */
  readonly tried: number;
  /** Whether it was stopped before it was through: then this is the best until there. */
  readonly stopped: boolean;
  /** The answer as a design file's data. */
  readonly data: unknown;
}

type Answer = Omit<SizeReport, 'tried'>;

/** What is asked of a sizing. */
export interface SizeWish {
  readonly request: SizeRequest;
  /** Also the designs along the trade of depth, g and metal. */
  readonly trade: boolean;
  /** Where baffles go in the pan as it stands, in place of sizing it. */
  readonly baffles: boolean;
}

/**
 * The answer to a request, with what binds and what it is worth; or why there is none, and what would have to
 * give. Where the answers stop on the way, the best of what was seen until then.
 */
export function* sizeReport(pose: Pose, wish: SizeWish): StoppableSearch<SizeReport> {
  const { request, trade, baffles } = wish;
  const asked = pose(request);
  const counted = { tried: 0 };
  const count = ({ length }: readonly Trial[]): void => {
    counted.tried += length;
  };
  const told = (answer: Answer, more: Partial<SizeReport>): SizeReport =>
    freeze({ ...answer, ...more, tried: counted.tried });
  if (baffles) {
    const plan = latest<BafflePlan>({ tried: [], chosen: null });
    const done = yield* untilStopped(bafflePlan(pose, request, asked.design, plan.tell), count);
    const { chosen, tried } = plan.now();
    const answer = answerOf(chosen?.problem ?? asked, asked, chosen?.found ?? null);
    return told(answer, { layouts: tried, stopped: done === null });
  }
  const seen: Trial[] = [];
  const whole = yield* untilStopped(sizedDesign(asked), (trials) => {
    count(trials);
    seen.push(...trials);
  });
  const found = whole ?? soFar(seen);
  const answer = answerOf(asked, asked, found);
  if (whole === null) return told(answer, { stopped: true });
  if (whole.best.verdict.miss === 0) {
    if (!trade) return told(answer, {});
    const designs = latest<readonly TradeDesign[]>([]);
    const done = yield* untilStopped(tradeDesigns(pose, request, designs.tell), count);
    return told(answer, { trade: designs.now(), stopped: done === null });
  }
  const conflict = yield* untilStopped(conflictIn(pose, request, whole.seen), count);
  if (conflict === null) return told(answer, { stopped: true });
  const reliefs = latest<readonly Relief[]>([]);
  const done = yield* untilStopped(reliefsOf(pose, request, conflict, reliefs.tell), count);
  return told(answer, { conflict, reliefs: reliefs.now(), stopped: done === null });
}

/** The last of what a search has told, for when it is stopped. */
const latest = <T>(first: T): { readonly tell: (value: T) => void; readonly now: () => T } => {
  let value = first;
  return {
    tell: (next) => {
      value = next;
    },
    now: () => value,
  };
};

/** The best of the designs seen before a search was stopped. */
const soFar = (seen: readonly Trial[]): Found | null => {
  const whole = seen.filter(({ verdict }) => verdict.whole);
  if (whole.length === 0) return null;
  const binding = new Set<string>();
  for (const { verdict } of seen) learn(binding, verdict);
  return { best: bestOf(whole), slopes: null, binding, seen };
};

const BINDS = 0.05;

const answerOf = (problem: SizeProblem, asked: SizeProblem, found: Found | null): Answer => {
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
    stopped: false,
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

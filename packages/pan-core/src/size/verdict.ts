import { type Check, constraintChecks, type Status } from '../check/index.js';
import type { Design } from '../design/index.js';
import { PanError } from '../errors/index.js';
import { valuesOf } from './freedom.js';
import { figureOf, type Goal, goalOf, isQuick } from './goal.js';
import { designAt, type SizeProblem } from './problem.js';
import type { SizeRequest } from './request.js';

/** A check as the search sees it: how far inside its limit, and whether a miss stops the design. */
export interface Row {
  readonly id: string;
  /** Negative when missed, 0 at the limit. */
  readonly margin: number;
  readonly missed: boolean;
  readonly status: Status;
  readonly value: number | null;
  readonly limit: number | null;
  readonly unit: string;
}

/** What became of one set of values. */
export interface Verdict {
  /** To be made least, in the goal's scale; infinite where the pan cannot be built. */
  readonly cost: number;
  readonly rows: readonly Row[];
  /** Total miss over the checks that stop the design, in the scale of their margins; 0 passes. */
  readonly miss: number;
  /** Why the pan cannot be built, or null. */
  readonly broken: string | null;
  /** Whether every check was asked. */
  readonly whole: boolean;
}

/** A place to ask about, and the miss from which the rest of its checks no longer matters. */
export interface Question {
  readonly at: readonly number[];
  readonly enough: number;
}

/** The miss of what cannot be built: worse than any that can. */
const BROKEN_MISS = 1e3;

/** The checks at a place; a pan that cannot be built is an answer too. */
export const verdictAt = (problem: SizeProblem, { at, enough }: Question): Verdict => {
  try {
    const read = designAt(problem, at);
    const rows: Row[] = keptRows(problem, read.design, at);
    let miss = missOf(rows);
    let whole = true;
    for (const group of constraintChecks(read, 'shift')) {
      if (miss > enough) {
        whole = false;
        break;
      }
      const more = group.map((check) => rowOf(check, problem.request));
      rows.push(...more);
      miss += missOf(more);
    }
    return { cost: costOf(problem, read.design, at, rows), rows, miss, broken: null, whole };
  } catch (error) {
    if (!(error instanceof PanError)) throw error;
    return {
      cost: Number.POSITIVE_INFINITY,
      rows: [],
      miss: BROKEN_MISS,
      broken: error.problems[0]?.message ?? 'The pan cannot be built.',
      whole: false,
    };
  }
};

const missOf = (rows: readonly Row[]): number =>
  rows.reduce((all, { missed, margin }) => all + (missed ? -margin : 0), 0);

const rowOf = ({ id, status, margin, value, limit, unit }: Check, { hold, only, ease }: SizeRequest): Row => {
  const counts = id !== ease && (only === null || only.includes(id));
  const missed = counts && (status === 'fail' || (status === 'warn' && hold.includes(id)));
  // A pass within the rounding of its limit is a pass, and a miss by as little is still a miss.
  const told = missed ? Math.min(margin, -1e-12) : status === 'pass' ? Math.max(margin, 0) : margin;
  return { id, margin: told, missed, status, value, limit, unit };
};

/** Figures that must be kept, as rows beside the checks. */
const keptRows = ({ request, freedoms }: SizeProblem, design: Design, at: readonly number[]): Row[] =>
  request.kept.map(({ goal: name, figure }) => {
    const goal = goalOf(name);
    const value = figureOf(goal, { design, freedoms, values: valuesOf(freedoms, at) });
    const slack = signOf(goal) * (figure - value);
    const missed = slack < -1e-9 * Math.max(1, Math.abs(figure));
    const margin = slack / goal.scale;
    return {
      id: `kept ${name}`,
      margin: missed ? Math.min(margin, -1e-12) : Math.max(margin, 0),
      missed,
      status: missed ? 'fail' : 'pass',
      value,
      limit: figure,
      unit: goal.unit,
    };
  });

const signOf = ({ sense }: Goal): 1 | -1 => (sense === 'least' ? 1 : -1);

const costOf = (
  { goal, freedoms, request }: SizeProblem,
  design: Design,
  at: readonly number[],
  rows: readonly Row[],
): number => {
  if (request.ease !== null) return -(rows.find(({ id }) => id === request.ease)?.margin ?? -BROKEN_MISS);
  return (signOf(goal) * figureOf(goal, { design, freedoms, values: valuesOf(freedoms, at) })) / goal.scale;
};

/** The cost alone where it needs no pan, else null. */
export const quickCost = (problem: SizeProblem, at: readonly number[]): number | null => {
  if (!isQuick(problem.goal.name) || problem.request.ease !== null) return null;
  try {
    return costOf(problem, designAt(problem, at).design, at, []);
  } catch (error) {
    if (error instanceof PanError) return null;
    throw error;
  }
};

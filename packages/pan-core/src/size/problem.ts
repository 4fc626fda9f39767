import { type Design, type Drawings, designReader, type ReadDesign, withScans } from '../design/index.js';
import type { TriangleSoup } from '../geometry/index.js';
import type { Unit } from '../units/index.js';
import { withEdits } from './edit.js';
import { freedomsOf } from './free-choice.js';
import { type Freedom, valuesOf } from './freedom.js';
import { figureOf, type Goal, goalOf, SEVERITY } from './goal.js';
import type { SizeRequest } from './request.js';

/** What a design file needs besides its own text: units out of the ordinary, drawings and scans that it names. */
export interface Beside {
  readonly extra: readonly Unit[];
  readonly drawings: Drawings;
  /** By file name. */
  readonly scans: ReadonlyMap<string, TriangleSoup>;
}

export const NOTHING_BESIDE: Beside = { extra: [], drawings: {}, scans: new Map() };

type Reader = (raw: unknown) => ReadDesign;

const readerOf = (like: unknown, { extra, drawings, scans }: Beside): Reader => {
  const read = designReader(like, extra, drawings);
  return scans.size === 0 ? read : (raw) => withScans(read(raw), scans);
};

/** A design with some of its values free, and what it is to be best at. */
export interface SizeProblem {
  readonly request: SizeRequest;
  /** The file as plain data, with the request's changes made. */
  readonly raw: unknown;
  readonly read: Reader;
  readonly design: Design;
  readonly freedoms: readonly Freedom[];
  readonly goal: Goal;
}

/**
 * @throws PanError where the design cannot be read, a free value is not known, or the cheapest is asked for
 * without prices
 */
export const sizeProblem = (
  file: unknown,
  request: SizeRequest,
  beside: Beside = NOTHING_BESIDE,
): SizeProblem => {
  const raw = withEdits(file, request.start);
  const read = readerOf(raw, beside);
  const { design } = read(raw);
  const goal = goalOf(request.goal);
  const chosen = freedomsOf(raw, design, request.free);
  const freedoms = request.severity === null ? chosen : [...chosen, severityIn(request.severity)];
  if (goal.name === 'cheapest') figureOf(goal, { design, freedoms, values: freedoms.map(({ now }) => now) });
  return { request, raw, read, design, freedoms, goal };
};

/** The cases' g as something to choose; no file holds it. */
const severityIn = ([from, to]: readonly [number, number]): Freedom => ({
  name: SEVERITY,
  kind: 'factor',
  now: Math.max(from, Math.min(to, 1)),
  from,
  to,
  step: 0.001,
  rangeAssumed: false,
  edits: () => [],
});

/** The plain data of the design at a place, each coordinate 0 to 1 within its freedom's range. */
export const dataAt = ({ raw, freedoms }: SizeProblem, at: readonly number[]): unknown => {
  const values = valuesOf(freedoms, at);
  return withEdits(
    raw,
    freedoms.flatMap(({ edits }, i) => edits(values[i] as number)),
  );
};

/** The design at a place, its cases as hard as chosen. */
export const designAt = (problem: SizeProblem, at: readonly number[]): ReadDesign => {
  const read = problem.read(dataAt(problem, at));
  const factor = severityAt(problem, at);
  return factor === 1 ? read : { ...read, design: harder(read.design, factor) };
};

export const severityAt = ({ freedoms }: SizeProblem, at: readonly number[]): number =>
  valuesOf(freedoms, at)[freedoms.findIndex(({ name }) => name === SEVERITY)] ?? 1;

const harder = (design: Design, factor: number): Design => ({
  ...design,
  manoeuvres: design.manoeuvres.map((one) => ({
    ...one,
    forward: one.forward * factor,
    left: one.left * factor,
    via: one.via.map((load) => ({ ...load, forward: load.forward * factor, left: load.left * factor })),
  })),
});

/** Problems by request, the last one kept: a search asks about one many times over. */
export const posed = (
  file: unknown,
  beside: Beside = NOTHING_BESIDE,
): ((request: SizeRequest) => SizeProblem) => {
  let last: { readonly key: string; readonly problem: SizeProblem } | null = null;
  return (request) => {
    const key = JSON.stringify(request);
    if (last?.key !== key) last = { key, problem: sizeProblem(file, request, beside) };
    return last.problem;
  };
};

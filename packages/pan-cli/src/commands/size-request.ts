import {
  type FreeWish,
  type GoalName,
  goalNames,
  nearestWord,
  PanError,
  type Problem,
  readQuantity,
  requestFor,
  type SizeWish,
} from 'pan-core';
import type { Given, LengthUnits } from './command.js';
import { optionQuantity, type Span, within } from './option-quantity.js';

const WISH = /^(?<what>.+?)(?:\s*[:=]\s*(?<range>.+))?$/;
const MOST_SEED = 0xffffffff;
const TIME: Span = {
  most: 24,
  unit: 'h',
  size: 3600,
  advice: 'Write it with its unit, as in --time "60 s"; leave it out to let the search come to its end.',
};

const problem = (message: string, found: string, advice: string): Problem => ({
  code: 'input-option',
  path: [],
  message,
  found: found.slice(0, 60),
  advice,
});

const FREE_ADVICE =
  'Write values with ranges, as in --free "sump depth: 140..180, fill: 6 L..8 L, mouth x: 150".';

/** A value of a range in mm or mm³; a fill may have its own unit, and so may a length. */
const endOf = (typed: string, what: string, units: LengthUnits, problems: Problem[]): number | null => {
  const fill = what.trim().toLowerCase() === 'fill';
  const read = readQuantity(typed.trim(), fill ? 'volume' : 'length', fill ? 'L' : units);
  if (read.ok) return read.value;
  problems.push(problem(`--free: "${what.slice(0, 40)}" ${read.reason}.`, typed, read.advice ?? FREE_ADVICE));
  return null;
};

const wishOf = (typed: string, units: LengthUnits, problems: Problem[]): FreeWish => {
  const { what = typed, range } = WISH.exec(typed.trim())?.groups ?? {};
  if (range === undefined) return { what: what.trim(), from: null, to: null, step: null };
  const [span = '', by] = range.split(/\s+by\s+/);
  const ends = span.split('..');
  if (ends.length > 2) problems.push(problem('--free: a range has two ends.', range, FREE_ADVICE));
  const [from, to = from] = ends.slice(0, 2).map((end) => endOf(end, what, units, problems));
  const step = by === undefined ? null : endOf(by, what, units, problems);
  if (step !== null && step <= 0)
    problems.push(problem('--free: a step must be more than 0.', by ?? '', FREE_ADVICE));
  return { what: what.trim(), from: from ?? null, to: to ?? null, step };
};

const list = (typed: string | true | undefined): readonly string[] =>
  typeof typed !== 'string'
    ? []
    : typed
        .split(',')
        .map((part) => part.trim())
        .filter((part) => part !== '');

/** What is asked of a sizing, and the seconds after which it is to give the best so far. */
export interface TimedWish extends SizeWish {
  readonly seconds: number | null;
}

/** @throws PanError `input-option` with everything that is wrong with the options */
export const readSizeWish = async ({ options }: Given, units: LengthUnits): Promise<TimedWish> => {
  const problems: Problem[] = [];
  const time = within(await optionQuantity(options, 'time', 'time', 's'), 'time', TIME);
  if (time?.problem !== undefined) problems.push(time.problem);
  const free = list(options.free).map((typed) => wishOf(typed, units, problems));
  const goal = options.for ?? 'least change';
  const known: readonly string[] = goalNames;
  if (typeof goal !== 'string' || !known.includes(goal)) {
    const near = nearestWord(String(goal), goalNames);
    problems.push(
      problem(
        `--for must be one of ${goalNames.join(', ')}.`,
        String(goal),
        near === null ? 'Leave it out for the least change.' : `Did you mean "${near}"?`,
      ),
    );
  }
  const seed = options.seed === undefined ? 1 : Number(options.seed);
  if (!Number.isInteger(seed) || seed < 0 || seed > MOST_SEED) {
    problems.push(
      problem('--seed must be a whole number from 0.', String(options.seed), 'Leave it out for 1.'),
    );
  }
  if (problems.length > 0) throw new PanError(problems);
  return {
    request: requestFor(goal as GoalName, free, { hold: list(options.hold), seed }),
    trade: options.trade === true,
    baffles: options.baffles === true,
    seconds: time?.value ?? null,
  };
};

import { PanError, type Problem, readQuantity } from 'pan-core';
import type { LengthUnits } from './command.js';
import { type Measurement, measurements } from './measurements.js';

/** Measurements by option name: mm, or degrees. */
export type Measured = Readonly<Record<string, number>>;

const DEGREE = Math.PI / 180;

/** The value of one answer, or a sentence that says what is wrong with it. */
export const readAnswer = (answer: string, one: Measurement, units: LengthUnits): number | string => {
  const read = readQuantity(answer, one.kind, one.kind === 'angle' ? 'deg' : units);
  if (!read.ok) return `${answer.trim() === '' ? 'It' : `"${answer.trim()}"`} ${read.reason}. ${read.advice}`;
  const value = one.kind === 'angle' ? read.value / DEGREE : read.value;
  if (value >= one.from && value <= one.to) return value;
  const unit = one.kind === 'angle' ? 'deg' : 'mm';
  return `${Number(value.toFixed(2))} ${unit} cannot be meant: it should lie between ${one.from} and ${one.to} ${unit}.`;
};

const problem = (message: string, advice: string): Problem => ({
  code: 'input-option',
  path: [],
  message,
  advice,
});

/** The sump must lie within the rail and below the shallow part, or there is nothing to fold. */
export const refuseImpossible = (measured: Measured): void => {
  const {
    'rail-length': rail = 0,
    'sump-length': sump = 0,
    'sump-depth': deep = 0,
    shallow = 0,
    ground = 0,
  } = measured;
  const problems: Problem[] = [];
  if (sump > rail - 100) {
    problems.push(
      problem(
        `A sump that ends ${sump.toFixed(0)} mm from the rear face leaves less than 100 mm of a rail ${rail.toFixed(0)} mm long.`,
        'Give a shorter --sump-length, or measure --rail-length again.',
      ),
    );
  }
  if (deep < shallow + 30) {
    problems.push(
      problem(
        `A sump ${deep.toFixed(0)} mm deep is not 30 mm deeper than the shallow part, ${shallow.toFixed(0)} mm.`,
        'Give a deeper --sump-depth or a smaller --shallow.',
      ),
    );
  }
  if (deep > ground) {
    problems.push(
      problem(
        `A sump ${deep.toFixed(0)} mm deep goes through the road, ${ground.toFixed(0)} mm below the rail.`,
        'Give a smaller --sump-depth, or measure --ground again.',
      ),
    );
  }
  if (problems.length > 0) throw new PanError(problems);
};

/**
 * The ten measurements from options alone.
 *
 * @throws PanError `input-option` naming each that is missing or cannot be read.
 */
export const measuredFromOptions = (
  options: Readonly<Record<string, string | true | undefined>>,
  units: LengthUnits,
): Measured => {
  const problems: Problem[] = [];
  const measured: Record<string, number> = {};
  for (const one of measurements) {
    const given = options[one.flag];
    if (typeof given !== 'string') {
      problems.push(problem(`--${one.flag} is missing.`, `It asks for: ${one.ask}.`));
      continue;
    }
    const value = readAnswer(given, one, units);
    if (typeof value === 'string')
      problems.push(problem(`--${one.flag}: ${value}`, `It asks for: ${one.ask}.`));
    else measured[one.flag] = value;
  }
  if (problems.length > 0) throw new PanError(problems);
  refuseImpossible(measured);
  return measured;
};

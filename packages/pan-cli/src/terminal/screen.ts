import type { LengthUnits, Screen } from '../commands/command.js';

const NARROWEST = 60;
const WIDEST = 100;
const USUAL = 80;

type Env = Readonly<Record<string, string | undefined>>;

/** Columns to fill: the terminal's, else the COLUMNS a user set, else 80; never wider than reads well. */
export const screenWidth = (terminal: number | undefined, env: Env): number => {
  const asked = Number(env.COLUMNS);
  const wide = terminal ?? (Number.isInteger(asked) && asked > 0 ? asked : USUAL);
  return Math.min(WIDEST, Math.max(NARROWEST, wide));
};

/** Colour only for a terminal that can show it and a user who has not refused it (NO_COLOR, any value). */
export const colourWanted = (isTerminal: boolean, env: Env): boolean =>
  isTerminal && (env.NO_COLOR ?? '') === '' && env.TERM !== 'dumb';

export const processScreen = (units: LengthUnits, json: boolean): Screen => ({
  write: (text) => void process.stdout.write(text),
  tell: (text) => void process.stderr.write(text),
  width: screenWidth(process.stdout.columns, process.env),
  colour: colourWanted(process.stdout.isTTY === true, process.env),
  units,
  json,
  interactive: process.stdin.isTTY === true && process.stdout.isTTY === true,
});

/** Messages to a file or another program stay one line each, so that a place in a file can be searched for. */
export const messageWidth = (): number =>
  process.stderr.isTTY === true ? screenWidth(process.stderr.columns, process.env) : Number.POSITIVE_INFINITY;

import type { Problem } from 'pan-core';
import type { Given } from './command.js';

const SLOWEST = 100;
const FASTEST = 20000;

export interface Rpm {
  readonly value?: number;
  readonly problem?: Problem;
}

/** `--rpm`: an engine speed, rev/min; empty where it was not given. */
export const readRpm = ({ options }: Given): Rpm => {
  const typed = options.rpm;
  if (typeof typed !== 'string') return {};
  const value = /^\d{1,6}$/.test(typed) ? Number(typed) : Number.NaN;
  if (value >= SLOWEST && value <= FASTEST) return { value };
  return {
    problem: {
      code: 'input-option',
      path: [],
      message: `--rpm must be a whole number of revolutions a minute from ${SLOWEST} to ${FASTEST}.`,
      found: typed.slice(0, 40),
      advice: 'Leave it out for the highest speed that oil.held_up and oil.pump are given at.',
    },
  };
};

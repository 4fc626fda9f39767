import type { Screen } from 'pan-cli/commands/command.js';

/** A terminal of that width that shows no colour, asks nothing and keeps what is written to itself. */
export const plainScreen = (width: number, more: Partial<Screen> = {}): Screen => ({
  write: () => {},
  tell: () => {},
  width,
  colour: false,
  units: 'mm',
  json: false,
  interactive: false,
  ...more,
});

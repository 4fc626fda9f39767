import type { OptionSpec } from './command.js';
import { measurements } from './measurements.js';

/** Where a new design comes from: an example, a worksheet, or ten measurements each by its own option. */
export const newOptions: Readonly<Record<string, OptionSpec>> = {
  from: { kind: 'text', what: 'Start from this example', choices: ['demo', 'two-wings', 'inches'] },
  'from-worksheet': { kind: 'flag', what: 'Ask the rows of the worksheet, in its order' },
  answers: { kind: 'text', what: 'With it: a file of answers, lines such as engine.rail.length: 690' },
  set: {
    kind: 'text',
    many: true,
    what: 'With it: one answer, as engine.rail.length=690 or "chassis.obstacles[1].name=drag link"; as often as needed',
  },
  title: { kind: 'text', what: 'Title of the design' },
  ...Object.fromEntries(measurements.map(({ flag, what }) => [flag, { kind: 'text' as const, what }])),
};

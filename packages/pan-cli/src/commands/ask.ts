import { input } from '@inquirer/prompts';
import type { LengthUnits } from './command.js';
import { type Measured, readAnswer, refuseImpossible } from './measured.js';
import { measurements } from './measurements.js';

/** Asks on a terminal for every measurement that no option gave. */
export const askMeasurements = async (
  options: Readonly<Record<string, string | true | undefined>>,
  units: LengthUnits,
  tell: (text: string) => void,
): Promise<Measured> => {
  tell(`Ten measurements. A bare number is ${units}; 5 1/2 in or 140 mm works too. Ctrl-C stops.\n`);
  const measured: Record<string, number> = {};
  for (const [i, one] of measurements.entries()) {
    const given = options[one.flag];
    const bare = one.kind === 'angle' ? 'deg' : units;
    const typed =
      typeof given === 'string' && typeof readAnswer(given, one, units) === 'number'
        ? given
        : await input({
            message: `${i + 1}/${measurements.length}  ${one.ask}, ${bare}:`,
            validate: (answer) => {
              const value = readAnswer(answer, one, units);
              return typeof value === 'number' ? true : value;
            },
          });
    measured[one.flag] = Number(readAnswer(typed, one, units));
  }
  refuseImpossible(measured);
  return measured;
};

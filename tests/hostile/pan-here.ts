import { readArguments } from 'pan-cli/commands/arguments.js';
import { commands, sharedOptions } from 'pan-cli/commands/list.js';
import { placedError } from 'pan-cli/read/placed-error.js';
import { explanation } from 'pan-cli/terminal/explanation.js';
import { plainScreen } from '../plain-screen.js';
import type { Ran } from './pan-command.js';

/**
 * What `pan` with those words says and ends with, worked out in this process: for tests of what is said, where a start
 * of the program each time would be most of the work. What a process does with it is for `runPan`.
 */
export const panHere = async (args: readonly string[], width = 80): Promise<Ran> => {
  const [said, told]: [string[], string[]] = [[], []];
  let file = '';
  const json = args.includes('--json');
  const ran = (code: number): Ran => ({ code, out: said.join(''), err: told.join('') });
  try {
    const { command, given } = readArguments(args, commands, sharedOptions);
    file = given.file;
    const act = await command.load();
    const screen = plainScreen(width, {
      write: (text) => said.push(text),
      tell: (text) => told.push(text),
      units: given.options.units === 'in' ? 'in' : 'mm',
      json,
    });
    return ran(await act(given, screen));
  } catch (error) {
    const { text, data, code } = explanation(await placedError(error, file), file, Number.POSITIVE_INFINITY);
    told.push(text);
    if (json) said.push(`${JSON.stringify(data, null, 2)}\n`);
    return ran(code);
  }
};

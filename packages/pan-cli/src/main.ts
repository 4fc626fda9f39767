import type { ExitCode } from './commands/command.js';
import { commands, sharedOptions } from './commands/list.js';
import { messageWidth, processScreen, screenWidth } from './terminal/screen.js';

declare const PAN_VERSION: string;

/** A reader that stops reading early, as `pan … | head` does, is no fault; a full disk behind `>` is one. */
const mindBrokenOutput = (): void => {
  const quiet = (error: NodeJS.ErrnoException): boolean => error.code === 'EPIPE';
  process.stdout.on('error', (error: NodeJS.ErrnoException) => {
    if (!quiet(error))
      process.stderr.write(`The output could not be written: the system said ${error.code}.\n`);
    process.exit(quiet(error) ? (process.exitCode ?? 0) : 3);
  });
  process.stderr.on('error', (error: NodeJS.ErrnoException) => {
    process.exit(quiet(error) ? (process.exitCode ?? 0) : 3);
  });
};

const asksForHelp = (argv: readonly string[]): boolean => {
  const [first] = argv;
  if (argv.length === 1 && first === '--version') return true;
  const known = first?.startsWith('-') === true || commands.some(({ name }) => name === first);
  const end = argv.indexOf('--');
  const options = end < 0 ? argv : argv.slice(0, end);
  return known && (options.includes('--help') || options.includes('-h'));
};

/** What went wrong, as text for people and, when asked, as JSON for a program. */
const explain = async (error: unknown, file: string, json: boolean): Promise<ExitCode> => {
  const [{ explanation }, { placedError }] = await Promise.all([
    import('./terminal/explanation.js'),
    import('./read/placed-error.js'),
  ]);
  const { text, data, code } = explanation(await placedError(error, file), file, messageWidth());
  process.stderr.write(text);
  if (json) process.stdout.write(`${JSON.stringify(data, null, 2)}\n`);
  return code;
};

const run = async (argv: readonly string[]): Promise<ExitCode> => {
  let file = '';
  try {
    if (asksForHelp(argv)) {
      const { printHelp } = await import('./commands/help.js');
      await printHelp(argv, PAN_VERSION, screenWidth(process.stdout.columns, process.env));
      return 0;
    }
    const { readArguments } = await import('./commands/arguments.js');
    const { command, given } = readArguments(argv, commands, sharedOptions);
    file = given.file;
    const screen = processScreen(given.options.units === 'in' ? 'in' : 'mm', given.options.json === true);
    const act = await command.load();
    return await act(given, screen);
  } catch (error) {
    return await explain(error, file, argv.includes('--json'));
  }
};

/** Runs one command line, given without the program's own name, and sets the exit code. */
export const main = async (argv: readonly string[]): Promise<void> => {
  mindBrokenOutput();
  process.exitCode = await run(argv);
};

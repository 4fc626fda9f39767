import { PanError, type Problem } from 'pan-core';
import type { ExitCode } from './commands/command.js';
import { readCommandLine } from './commands/command-line.js';
import { processScreen, screenWidth } from './terminal/screen.js';

declare const PAN_VERSION: string;

/** A reader that stops reading early, as `pan … | head` does, is no fault. */
const leaveQuietlyWhenNobodyReads = (): void => {
  for (const stream of [process.stdout, process.stderr]) {
    stream.on('error', (error: NodeJS.ErrnoException) => {
      process.exit(error.code === 'EPIPE' ? (process.exitCode ?? 0) : 3);
    });
  }
};

const exitFor = (problems: readonly Problem[]): ExitCode =>
  problems.some(({ code }) => code === 'file-write' || code === 'file-edited' || code === 'internal') ? 3 : 2;

const asProblems = (error: unknown): readonly Problem[] =>
  error instanceof PanError
    ? error.problems
    : [
        {
          code: 'internal',
          path: [],
          message: `This is a fault in pan itself, not in your file: ${error instanceof Error ? error.message : String(error)}`,
          advice:
            'Nothing was decided and nothing should be cut from it. Please report it with the design file.',
        },
      ];

const explain = async (error: unknown, file: string, json: boolean): Promise<ExitCode> => {
  if (error instanceof Error && error.name === 'ExitPromptError') {
    process.stderr.write('Stopped. Nothing was written.\n');
    return 2;
  }
  const problems = asProblems(error);
  const { problemsData, problemsText } = await import('./terminal/problems.js');
  const { messageWidth } = await import('./terminal/screen.js');
  process.stderr.write(problemsText(problems, file, messageWidth()));
  if (json) process.stdout.write(`${JSON.stringify(problemsData(problems, file), null, 2)}\n`);
  return exitFor(problems);
};

const run = async (argv: readonly string[]): Promise<ExitCode> => {
  let file = '';
  try {
    const parsed = await readCommandLine(argv, PAN_VERSION, screenWidth(process.stdout.columns, process.env));
    if (parsed === null) return 0;
    const { command, given } = parsed;
    file = given.file;
    const screen = processScreen(given.options.units === 'in' ? 'in' : 'mm', given.options.json === true);
    const act = await command.load();
    return await act(given, screen);
  } catch (error) {
    return await explain(error, file, argv.includes('--json'));
  }
};

leaveQuietlyWhenNobodyReads();
process.exitCode = await run(process.argv.slice(2));

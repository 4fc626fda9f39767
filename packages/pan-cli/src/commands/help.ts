import yargs from 'yargs';
import type { CommandSpec, OptionSpec } from './command.js';
import { commands, sharedOptions } from './list.js';

const EXIT_CODES =
  'Exit codes: 0 nothing fails; 1 a check fails or something that must be measured is not known; ' +
  '2 wrong input; 3 could not write.';

const yargsOptions = (options: Readonly<Record<string, OptionSpec>>) =>
  Object.fromEntries(
    Object.entries(options).map(([name, option]) => [
      name,
      {
        describe: option.what,
        ...(option.kind === 'flag'
          ? { type: 'boolean' as const }
          : { type: 'string' as const, requiresArg: true }),
        ...(option.choices === undefined ? {} : { choices: option.choices }),
      },
    ]),
  );

/** Square brackets where the word may be left out, as yargs has it. */
const fileWord = ({ mayStandAlone }: CommandSpec): string => (mayStandAlone === true ? '[file]' : '<file>');

const parserFor = (version: string, width: number) => {
  const parser = yargs()
    .scriptName('pan')
    // Messages would follow the user's locale, and a bug report in a language nobody here reads.
    .locale('en')
    .parserConfiguration({
      'boolean-negation': false,
      'camel-case-expansion': false,
      'dot-notation': false,
      'parse-numbers': false,
      'parse-positional-numbers': false,
      'short-option-groups': false,
    })
    .usage('pan: from a page of measurements to a rear-sump oil pan\n\npan <command> <file> [options]')
    .version(version)
    .help()
    .alias('help', 'h')
    .wrap(width)
    .strict()
    .exitProcess(false)
    .example('pan new my-pan.yaml --from demo', 'Write a starter design to fill in')
    .example('pan check my-pan.yaml', 'What stops it, and what to change')
    .epilogue(EXIT_CODES)
    .fail((message, error) => {
      throw error ?? new Error(message);
    });
  return commands.reduce(
    (built, command) =>
      built.command(`${command.name} ${fileWord(command)}`, command.what, (one) =>
        command.examples
          .reduce(
            (shown, [text, why]) => shown.example(text, why),
            one.usage(`pan ${command.name} ${fileWord(command)} [options]\n\n${command.what}`),
          )
          .positional('file', { type: 'string', describe: command.file })
          .options(yargsOptions({ ...command.options, ...sharedOptions }))
          .version(false),
      ),
    parser,
  );
};

/** Prints the help or the version that was asked for. yargs lays it out; it decides nothing else. */
export const printHelp = async (argv: readonly string[], version: string, width: number): Promise<void> => {
  await parserFor(version, width).parseAsync([...argv]);
};

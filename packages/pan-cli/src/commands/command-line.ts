import yargs from 'yargs';
import type { CommandSpec, Given, OptionSpec } from './command.js';
import { commands, sharedOptions } from './list.js';

export interface Parsed {
  readonly command: CommandSpec;
  readonly given: Given;
}

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
      built.command(`${command.name} <file>`, command.what, (one) =>
        command.examples
          .reduce(
            (shown, [text, why]) => shown.example(text, why),
            one.usage(`pan ${command.name} <file> [options]\n\n${command.what}`),
          )
          .positional('file', { type: 'string', describe: command.file })
          .options(yargsOptions({ ...command.options, ...sharedOptions }))
          .version(false),
      ),
    parser,
  );
};

const asksForHelp = (argv: readonly string[]): boolean => {
  const end = argv.indexOf('--');
  const before = end < 0 ? argv : argv.slice(0, end);
  return before.includes('--help') || (before[0] === '--version' && argv.length === 1);
};

/**
 * Reads the words after `pan`. Null: help or the version was asked for and has been printed.
 *
 * @throws PanError `input-option` with everything that is wrong with them.
 */
export const readCommandLine = async (
  argv: readonly string[],
  version: string,
  width: number,
): Promise<Parsed | null> => {
  const parser = parserFor(version, width);
  const named = argv[0]?.startsWith('-') === true || commands.some((command) => command.name === argv[0]);
  if (named && asksForHelp(argv)) {
    await parser.parseAsync([...argv]);
    return null;
  }
  // Loaded apart, so that help does not wait for what only a real command needs.
  const { refuseArguments, refuseRest } = await import('./argument-scan.js');
  refuseArguments(argv, commands, sharedOptions);
  const typed = await parser.parseAsync([...argv]).catch(refuseRest);
  const command = commands.find((spec) => spec.name === argv[0]) as CommandSpec;
  const names = Object.keys({ ...sharedOptions, ...command.options });
  const options = Object.fromEntries(
    names
      .map((name) => [name, typed[name] as string | boolean | undefined])
      .map(([name, value]) => [name, value === false ? undefined : value]),
  );
  return { command, given: { file: String(typed.file), options } };
};

import { nearestWord, PanError, type Problem } from 'pan-core';
import type { CommandSpec, OptionSpec } from './command.js';

/** A token that starts like an option and is no negative number. */
const looksLikeOption = (token: string): boolean => /^(--.|-[^\d.-])/.test(token);

const optionProblem = (message: string, found: string | undefined, advice: string): Problem => ({
  code: 'input-option',
  path: [],
  message,
  found,
  advice,
});

const unknownOption = (name: string, command: CommandSpec, options: readonly string[]): Problem => {
  const near = nearestWord(name, options);
  return optionProblem(
    `\`pan ${command.name}\` has no option --${name}.`,
    `--${name}`,
    near === null ? `See \`pan ${command.name} --help\` for its options.` : `Did you mean --${near}?`,
  );
};

const valueProblem = (name: string, option: OptionSpec, value: string | undefined): Problem | null => {
  if (value === undefined || value === '') {
    return optionProblem(
      `--${name} needs a value.`,
      undefined,
      `Write it after the option: --${name} VALUE.`,
    );
  }
  if (option.choices !== undefined && !option.choices.includes(value)) {
    const near = nearestWord(value, option.choices);
    return optionProblem(
      `--${name} must be one of ${option.choices.join(', ')}.`,
      value,
      near === null ? `Choose one of ${option.choices.join(', ')}.` : `Did you mean ${near}?`,
    );
  }
  return null;
};

const commandProblem = (typed: string | undefined, commands: readonly CommandSpec[]): Problem => {
  const names = commands.map((command) => command.name);
  if (typed === undefined || typed.startsWith('-')) {
    return optionProblem('No command was given.', undefined, `Start with one of: ${names.join(', ')}.`);
  }
  const near = nearestWord(typed, names);
  return optionProblem(
    `There is no command \`${typed}\`.`,
    typed,
    near === null ? `The commands are: ${names.join(', ')}.` : `Did you mean \`pan ${near}\`?`,
  );
};

/**
 * Everything wrong with the way a command was spelled, all at once: unknown command or option, an option
 * twice, a value missing or not among its choices, no file or too many. An argument parser alone turns
 * these into arrays, NaN and empty strings and carries on.
 */
export const argumentProblems = (
  argv: readonly string[],
  commands: readonly CommandSpec[],
  shared: Readonly<Record<string, OptionSpec>>,
): Problem[] => {
  const command = commands.find((spec) => spec.name === argv[0]);
  if (command === undefined) return [commandProblem(argv[0], commands)];
  const options: Readonly<Record<string, OptionSpec>> = { ...shared, ...command.options };
  const strays: Problem[] = [];
  const problems: Problem[] = [];
  const seen = new Set<string>();
  const words: string[] = [];
  for (let i = 1; i < argv.length; i++) {
    const token = argv[i] as string;
    if (token === '--') {
      words.push(...argv.slice(i + 1));
      break;
    }
    if (!looksLikeOption(token)) {
      words.push(token);
      continue;
    }
    const equals = token.indexOf('=');
    const name = token.slice(0, equals < 0 ? undefined : equals).replace(/^--?/, '');
    const option = Object.hasOwn(options, name) ? options[name] : undefined;
    if (option === undefined || !token.startsWith('--')) {
      strays.push(unknownOption(name, command, Object.keys(options)));
      continue;
    }
    if (seen.has(name))
      problems.push(optionProblem(`--${name} is given more than once.`, token, 'Give it once.'));
    seen.add(name);
    if (option.kind === 'flag') {
      if (equals >= 0)
        problems.push(optionProblem(`--${name} takes no value.`, token, `Write --${name} alone.`));
      continue;
    }
    const next = argv[i + 1];
    const follows = next !== undefined && !looksLikeOption(next) && next !== '--';
    const value = equals >= 0 ? token.slice(equals + 1) : follows ? next : undefined;
    if (equals < 0 && follows) i++;
    const wrong = valueProblem(name, option, value);
    if (wrong !== null) problems.push(wrong);
  }
  // A word after an unknown option may have been meant as its value.
  const found = [...strays, ...problems];
  return strays.length > 0 && words.length > 1 ? found : [...found, ...fileProblems(words, command)];
};

const fileProblems = (words: readonly string[], command: CommandSpec): Problem[] => {
  if (words.length === 1 && words[0] !== '') return [];
  if (words.length <= 1) {
    return [
      optionProblem(
        `\`pan ${command.name}\` needs ${command.file}.`,
        undefined,
        `For example: ${command.examples[0]?.[0] ?? ''}`,
      ),
    ];
  }
  return [
    optionProblem(
      `\`pan ${command.name}\` takes one file and got ${words.length}: ${words.join(', ')}.`,
      words.slice(1).join(' '),
      'Put a value with spaces in quotes, as in --in-pan "5 L".',
    ),
  ];
};

/** @throws PanError `input-option` with everything that is wrong with the words after `pan` */
export const refuseArguments = (...args: Parameters<typeof argumentProblems>): void => {
  const problems = argumentProblems(...args);
  if (problems.length > 0) throw new PanError(problems);
};

/** What the argument parser itself would not take, should it ever be stricter than the scan. */
export const refuseRest = (error: unknown): never => {
  throw new PanError({
    code: 'input-option',
    path: [],
    message: error instanceof Error ? error.message : String(error),
    advice: 'See `pan --help`.',
  });
};

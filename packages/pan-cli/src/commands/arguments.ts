import { PanError, type Problem } from 'pan-core';
import {
  commandProblem,
  fileProblems,
  optionProblem,
  unknownOption,
  valueProblem,
} from './argument-problems.js';
import type { CommandSpec, Given, OptionSpec } from './command.js';

export interface Parsed {
  readonly command: CommandSpec;
  readonly given: Given;
}

type Options = Readonly<Record<string, OptionSpec>>;

/** A token that starts like an option and is no negative number. */
const looksLikeOption = (token: string): boolean => /^(--.|-[^\d.-])/.test(token);

/** What an option token says: its name and, after an equals sign, its value. */
const splitOption = (token: string): readonly [name: string, value: string | undefined] => {
  const equals = token.indexOf('=');
  const name = token.slice(0, equals < 0 ? undefined : equals).replace(/^--?/, '');
  return [name, equals < 0 ? undefined : token.slice(equals + 1)];
};

interface Scanned {
  readonly words: readonly string[];
  readonly values: ReadonlyMap<string, string | true>;
  readonly strays: readonly Problem[];
  readonly problems: readonly Problem[];
}

const scan = (tokens: readonly string[], command: CommandSpec, options: Options): Scanned => {
  const words: string[] = [];
  const values = new Map<string, string | true>();
  const strays: Problem[] = [];
  const problems: Problem[] = [];
  for (let i = 0; i < tokens.length; i++) {
    const token = tokens[i] as string;
    if (token === '--') {
      words.push(...tokens.slice(i + 1));
      break;
    }
    if (!looksLikeOption(token)) {
      words.push(token);
      continue;
    }
    const [name, attached] = splitOption(token);
    const option = token.startsWith('--') && Object.hasOwn(options, name) ? options[name] : undefined;
    if (option === undefined) {
      strays.push(unknownOption(name, command, Object.keys(options)));
      continue;
    }
    if (values.has(name)) {
      problems.push(optionProblem(`--${name} is given more than once.`, token, 'Give it once.'));
    }
    if (option.kind === 'flag') {
      values.set(name, true);
      if (attached !== undefined) {
        problems.push(optionProblem(`--${name} takes no value.`, token, `Write --${name} alone.`));
      }
      continue;
    }
    const next = tokens[i + 1];
    const follows = attached === undefined && next !== undefined && !looksLikeOption(next) && next !== '--';
    const value = follows ? next : attached;
    if (follows) i++;
    values.set(name, value ?? '');
    const wrong = valueProblem(name, option, value);
    if (wrong !== null) problems.push(wrong);
  }
  return { words, values, strays, problems };
};

/**
 * Reads the words after `pan`. Strict on purpose: a general argument parser turns an option given twice into
 * a list, a missing value into an empty text and `--x.y` into an object, and carries on.
 *
 * @throws PanError `input-option` with all that is wrong at once: unknown command or option, an option twice,
 * a value missing or not among its choices, no file or too many.
 */
export const readArguments = (
  argv: readonly string[],
  commands: readonly CommandSpec[],
  shared: Options,
): Parsed => {
  const command = commands.find((spec) => spec.name === argv[0]);
  if (command === undefined) throw new PanError(commandProblem(argv[0], commands));
  const { words, values, strays, problems } = scan(argv.slice(1), command, { ...shared, ...command.options });
  // A word after an unknown option may have been meant as its value.
  const lost = strays.length > 0 && words.length > 1;
  const all = [...strays, ...problems, ...(lost ? [] : fileProblems(words, command))];
  if (all.length > 0) throw new PanError(all);
  return { command, given: { file: words[0] as string, options: Object.fromEntries(values) } };
};

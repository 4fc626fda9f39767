import { PanError, type Problem } from 'pan-core';
import parser from 'yargs-parser';
import * as z from 'zod/mini';
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

const namesOf = (options: Options, kind: OptionSpec['kind']): string[] =>
  Object.keys(options).filter((name) => options[name]?.kind === kind);

const nargs = (names: readonly string[], count: number) => names.map((name) => [name, count] as const);

/** Words and options as they were typed: a text takes the one word after it, a flag none, nothing is guessed. */
const parse = (tokens: readonly string[], options: Options) => {
  const texts = namesOf(options, 'text');
  const flags = namesOf(options, 'flag');
  const {
    _: words,
    '--': after = [],
    ...typed
  } = parser([...tokens], {
    string: [...texts, ...flags],
    narg: Object.fromEntries([...nargs(texts, 1), ...nargs(flags, 0)]),
    configuration: {
      'boolean-negation': false,
      'camel-case-expansion': false,
      'dot-notation': false,
      'parse-numbers': false,
      'parse-positional-numbers': false,
      'populate--': true,
      'short-option-groups': false,
    },
  });
  return { words: words.map(String), after: after.map(String), typed };
};

const filled = z.string().check(z.minLength(1));

/** What each option may hold: one text, one of a few words, or nothing beside its own name. */
const schemaFor = (options: Options) =>
  z.strictObject(
    Object.fromEntries(
      Object.entries(options).map(([name, { kind, choices, many }]) => {
        if (kind === 'flag') return [name, z.optional(z.literal(''))];
        if (many === true) return [name, z.optional(z.union([filled, z.array(filled)]))];
        return [name, z.optional(choices === undefined ? filled : z.enum(choices))];
      }),
    ),
  );

const holds = (typed: unknown): readonly unknown[] =>
  typed === undefined ? [] : Array.isArray(typed) ? typed : [typed];

/** The parser drops a value that is missing, or is one too many, without naming every such option. */
const droppedValues = (
  tokens: readonly string[],
  options: Options,
  typed: Readonly<Record<string, unknown>>,
): readonly Problem[] =>
  Object.entries(options).flatMap(([name, option]) => {
    const alone = tokens.filter((token) => token === `--${name}`).length;
    const attached = tokens.filter((token) => token.startsWith(`--${name}=`));
    if (option.kind === 'flag') {
      return attached.map((token) =>
        optionProblem(`--${name} takes no value.`, token, `Write --${name} alone.`),
      );
    }
    if (holds(typed[name]).length === alone + attached.length) return [];
    return valueProblem(name, option, undefined) ?? [];
  });

const optionProblems = (
  issues: readonly z.core.$ZodIssue[],
  command: CommandSpec,
  options: Options,
  typed: Readonly<Record<string, unknown>>,
): readonly Problem[] =>
  issues.flatMap((issue) => {
    if (issue.code === 'unrecognized_keys') {
      // The parser writes this one name otherwise, so that it can do no harm.
      const names = issue.keys.map((key) => key.replace(/^___proto___$/, '__proto__'));
      return names.map((name) => unknownOption(name, command, Object.keys(options)));
    }
    const name = String(issue.path[0]);
    const [first, ...more] = holds(typed[name]);
    if (more.length > 0 && options[name]?.many !== true) {
      return optionProblem(`--${name} is given more than once.`, `--${name}`, 'Give it once.');
    }
    return valueProblem(name, options[name] as OptionSpec, more.length > 0 ? '' : String(first)) ?? [];
  });

/**
 * Reads the words after `pan`: yargs' parser splits them, zod says what each option may hold, and what either
 * finds is told with the nearest word. Strict on purpose: left to itself a parser turns an option given twice
 * into a list, a missing value into an empty text and `--x.y` into an object, and carries on.
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
  const options = { ...shared, ...command.options };
  const tokens = argv.slice(1);
  const { words, after, typed } = parse(tokens, options);
  const end = tokens.indexOf('--');
  const before = end < 0 ? tokens : tokens.slice(0, end);
  const read = z.safeParse(schemaFor(options), typed, { jitless: true });
  // Options without a name, and the one the parser keeps its words under.
  const nameless = before.filter((token) => /^(---+(=|$)|--?_(=|$))/.test(token));
  const problems = [
    ...nameless.map((token) => unknownOption(token.replace(/^--/, ''), command, Object.keys(options))),
    ...(read.success ? [] : optionProblems(read.error.issues, command, options, typed)),
    ...droppedValues(before, options, typed),
  ];
  // A word after an unknown option was taken for its value, and may have been the file.
  const strange = Object.keys(typed).filter((name) => !Object.hasOwn(options, name));
  const lost = nameless.length > 0 || strange.some((name) => typed[name] !== true);
  if (!lost) problems.push(...fileProblems([...words, ...after], command));
  if (problems.length > 0) throw new PanError(problems);
  return {
    command,
    given: {
      file: [...words, ...after][0] ?? '',
      options: Object.fromEntries(
        Object.entries(typed).map(([name, value]) => [
          name,
          value === '' ? true : Array.isArray(value) ? value.join('\n') : String(value),
        ]),
      ),
    },
  };
};

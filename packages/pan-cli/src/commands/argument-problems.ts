import { nearestWord, type Problem } from 'pan-core';
import type { CommandSpec, OptionSpec } from './command.js';

export const optionProblem = (message: string, found: string | undefined, advice: string): Problem => ({
  code: 'input-option',
  path: [],
  message,
  found,
  advice,
});

export const unknownOption = (name: string, command: CommandSpec, options: readonly string[]): Problem => {
  const near = nearestWord(name, options);
  return optionProblem(
    `\`pan ${command.name}\` has no option --${name}.`,
    `--${name}`,
    near === null ? `See \`pan ${command.name} --help\` for its options.` : `Did you mean --${near}?`,
  );
};

export const valueProblem = (name: string, option: OptionSpec, value: string | undefined): Problem | null => {
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

export const commandProblem = (typed: string | undefined, commands: readonly CommandSpec[]): Problem => {
  const names = commands.map((command) => command.name);
  if (typed === undefined || typed.startsWith('-')) {
    return optionProblem(
      'No command was given.',
      undefined,
      `See \`pan --help\`, or start with one of: ${names.join(', ')}.`,
    );
  }
  const near = nearestWord(typed, names);
  return optionProblem(
    `There is no command \`${typed}\`.`,
    typed,
    near === null ? `The commands are: ${names.join(', ')}.` : `Did you mean \`pan ${near}\`?`,
  );
};

export const fileProblems = (words: readonly string[], command: CommandSpec): Problem[] => {
  const [word] = words;
  if (words.length === 1 && command.words !== undefined && word !== '') {
    if (command.words.includes(word as string)) return [];
    const few = command.words.join(' or ');
    return [optionProblem(`\`pan ${command.name}\` takes ${few}.`, word, `Write ${few}.`)];
  }
  if (words.length === 1 && word !== '') return [];
  if (words.length === 0 && command.mayStandAlone === true) return [];
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

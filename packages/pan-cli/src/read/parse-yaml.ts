import { PanError, type Problem } from 'pan-core';
import { Composer, type Document, isAlias, isCollection, isPair, isScalar, LineCounter, visit } from 'yaml';
import { plainNumberProblem } from './plain-number.js';
import { syntaxProblem } from './syntax-problem.js';
import { syntaxTokens } from './syntax-token.js';

/** A parsed file and where its parts stand. */
export interface Parsed {
  readonly raw: unknown;
  readonly document: Document.Parsed;
  readonly lines: LineCounter;
}

const MOST_PROBLEMS = 20;

/**
 * Parses a design file as plain YAML data: no aliases, tags, merge keys, doubled keys or odd numbers.
 *
 * @throws PanError `input-syntax` with every problem found, each with line and column
 */
export const parseYaml = (text: string): Parsed => {
  const lines = new LineCounter();
  const composer = new Composer({
    prettyErrors: false,
    stringKeys: true,
    uniqueKeys: true,
    merge: false,
    version: '1.2',
    schema: 'core',
    strict: true,
  });
  // The second argument makes an empty text a document too.
  const [document, second] = composer.compose(syntaxTokens(text, lines), true, text.length);
  if (document === undefined) throw new Error('a text without a document');
  throwIfAny(
    [...document.errors, ...document.warnings].map(({ code, message, pos }) =>
      syntaxProblem(lines, pos[0], ...inPlainWords(code, message)),
    ),
  );
  if (second !== undefined) {
    const message = 'The file holds more than one document (---).';
    throwIfAny([syntaxProblem(lines, second.range[0], message, 'Keep one design in one file.')]);
  }
  throwIfAny(nodeProblems(document, lines));
  const raw: unknown = document.toJS({ maxAliasCount: 0 });
  if (typeof raw !== 'object' || raw === null || Array.isArray(raw)) {
    throwIfAny([
      syntaxProblem(
        lines,
        0,
        'The file is not a group of keys.',
        'Begin with format: 1; start a file with: pan new',
      ),
    ]);
  }
  return { raw, document, lines };
};

const throwIfAny = (problems: readonly Problem[]): void => {
  if (problems.length > 0) throw new PanError(problems.slice(0, MOST_PROBLEMS));
};

/** What the YAML rules allow but a reader of the file would not see through. */
const nodeProblems = (document: Document.Parsed, lines: LineCounter): readonly Problem[] => {
  const problems: Problem[] = [];
  visit(document, (_, node, ancestors) => {
    if (isPair(node)) return;
    if (isAlias(node)) {
      problems.push(
        syntaxProblem(
          lines,
          node.range?.[0] ?? 0,
          'Aliases (*name) are not read here.',
          'Write the value out.',
        ),
      );
    } else if ((isScalar(node) || isCollection(node)) && node.tag?.startsWith('!')) {
      problems.push(
        syntaxProblem(
          lines,
          node.range?.[0] ?? 0,
          `Tags (${node.tag}) are not read here.`,
          'Write the value alone.',
        ),
      );
    } else if (isScalar(node)) {
      const problem = plainNumberProblem(node, ancestors, lines);
      if (problem !== null) problems.push(problem);
    }
  });
  return problems;
};

const inPlainWords = (code: string, message: string): [string, string] => {
  switch (code) {
    case 'TAB_AS_INDENT':
      return ['A tab stands where spaces are needed.', 'Indent with spaces.'];
    case 'DUPLICATE_KEY':
      return ['This key is given twice.', 'Keep one of them.'];
    case 'BAD_INDENT':
      if (message.startsWith('Flow')) return ['A bracket above is not closed.', 'Close it with ] or }.'];
      return ['The indentation does not line up.', 'Line the key up with its neighbours.'];
    case 'BAD_ALIAS':
      return ['Aliases (*name) are not read here.', 'Write the value out.'];
    case 'NON_STRING_KEY':
      return ['A key must be a word.', 'Write the key as plain text.'];
    case 'TAG_RESOLVE_FAILED':
      return ['Tags (!name) are not read here.', 'Write the value alone.'];
    default:
      return [`This cannot be read as YAML: ${message}.`, 'Look at this line and the one before it.'];
  }
};

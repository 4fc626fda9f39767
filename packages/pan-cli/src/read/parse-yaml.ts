import { PanError, type Problem } from 'pan-core';
import {
  type Document,
  isAlias,
  isCollection,
  isPair,
  isScalar,
  LineCounter,
  parseDocument,
  type Scalar,
  visit,
} from 'yaml';

/** A parsed file and where its parts stand. */
export interface Parsed {
  readonly raw: unknown;
  readonly document: Document.Parsed;
  readonly lines: LineCounter;
}

const DEEPEST = 20;
const MOST_PROBLEMS = 20;

/**
 * Parses a design file as plain YAML data: no aliases, tags, merge keys or doubled keys.
 *
 * @param name the file's name, for messages
 * @throws PanError with every problem found, each with line and column
 */
export const parseYaml = (text: string, name: string): Parsed => {
  refuseDepth(text, name);
  const lines = new LineCounter();
  const document = parseDocument(text, {
    lineCounter: lines,
    prettyErrors: false,
    stringKeys: true,
    uniqueKeys: true,
    merge: false,
    version: '1.2',
    schema: 'core',
    strict: true,
  });
  const faults = [...document.errors, ...document.warnings];
  if (faults.length > 0) {
    const problems = faults.slice(0, MOST_PROBLEMS).map(({ code, message, pos }) => {
      const { line, col } = lines.linePos(pos[0]);
      return problemAt(name, line, col, ...inPlainWords(code, message));
    });
    throw new PanError(problems);
  }
  refuseNodes(document, lines, name);
  const raw: unknown = document.toJS({ maxAliasCount: 0 });
  if (typeof raw !== 'object' || raw === null || Array.isArray(raw)) {
    throw new PanError(
      problemAt(
        name,
        1,
        1,
        'The file is not a group of keys.',
        'Begin with format: 1; start a file with: pan new',
      ),
    );
  }
  return { raw, document, lines };
};

export const problemAt = (
  name: string,
  line: number,
  column: number,
  message: string,
  advice: string,
): Problem => ({
  code: 'input-syntax',
  path: [],
  message: `${name}:${line}:${column}: ${message}`,
  advice,
  line,
  column,
});

/** Nesting is counted on the text, because a parser would already have followed it. */
const refuseDepth = (text: string, name: string): void => {
  let depth = 0;
  let line = 1;
  let lineStart = 0;
  for (let i = 0; i < text.length; i++) {
    const character = text[i];
    if (character === '\n') {
      line += 1;
      lineStart = i + 1;
    } else if (character === '[' || character === '{') depth += 1;
    else if (character === ']' || character === '}') depth -= 1;
    else if (character === '#') {
      // A comment's brackets do not nest.
      while (i + 1 < text.length && text[i + 1] !== '\n') i += 1;
    }
    if (depth > DEEPEST) {
      const message = `Lists and groups are nested more than ${DEEPEST} deep.`;
      throw new PanError(
        problemAt(name, line, i - lineStart + 1, message, 'Look for a bracket that is not closed.'),
      );
    }
  }
};

/** Aliases, tags and numbers in other bases mean something a reader of the file would not see. */
const refuseNodes = (document: Document.Parsed, lines: LineCounter, name: string): void => {
  const problems: Problem[] = [];
  const at = (range: readonly number[] | null | undefined, message: string, advice: string): void => {
    const { line, col } = lines.linePos(range?.[0] ?? 0);
    if (problems.length < MOST_PROBLEMS) problems.push(problemAt(name, line, col, message, advice));
  };
  visit(document, (_, node, path) => {
    if (isPair(node)) return undefined;
    if (isAlias(node)) {
      at(node.range, 'Aliases (*name) are not read here.', 'Write the value out.');
      return undefined;
    }
    if (isScalar(node) && typeof node.value === 'number' && !isPlainDecimal(node)) {
      at(
        node.range,
        `${node.source ?? 'This'} is not a plain decimal number.`,
        'Write it in ordinary figures.',
      );
    }
    if ((isScalar(node) || isCollection(node)) && node.tag?.startsWith('!')) {
      at(node.range, `Tags (${node.tag}) are not read here.`, 'Write the value alone.');
    }
    if (path.length > DEEPEST * 2) {
      at((node as Scalar).range, `Lists and groups are nested more than ${DEEPEST} deep.`, 'Indent less.');
      return visit.BREAK;
    }
    return undefined;
  });
  if (problems.length > 0) throw new PanError(problems);
};

// `012` would arrive as 12, `0x10` as 16, `.nan` and `1e999` as no number at all.
const isPlainDecimal = (node: Scalar): boolean =>
  Number.isFinite(node.value) &&
  /^[+-]?(0|[1-9]\d*|(0|[1-9]\d*)?\.\d+|(0|[1-9]\d*)\.)([eE][+-]?\d+)?$/.test(node.source ?? '');

const inPlainWords = (code: string, message: string): [string, string] => {
  switch (code) {
    case 'TAB_AS_INDENT':
      return ['A tab stands where spaces are needed.', 'Indent with spaces.'];
    case 'DUPLICATE_KEY':
      return ['This key is given twice.', 'Keep one of them.'];
    case 'BAD_INDENT':
      return ['The indentation does not line up.', 'Line the key up with its neighbours.'];
    case 'BAD_ALIAS':
      return ['Aliases (*name) are not read here.', 'Write the value out.'];
    case 'MULTIPLE_DOCS':
      return ['The file holds more than one document (---).', 'Keep one design in one file.'];
    case 'NON_STRING_KEY':
      return ['A key must be a word.', 'Write the key as plain text.'];
    case 'TAG_RESOLVE_FAILED':
      return ['Tags (!name) are not read here.', 'Write the value alone.'];
    case 'MISSING_CHAR':
      return [
        `Something is missing: ${message.toLowerCase()}.`,
        'Close the bracket or quote, or add the colon.',
      ];
    default:
      return [`This cannot be read as YAML: ${message}.`, 'Look at this line and the one before it.'];
  }
};

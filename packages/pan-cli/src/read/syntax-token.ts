import { PanError } from 'pan-core';
import { CST, Lexer, type LineCounter, Parser } from 'yaml';
import { syntaxProblem } from './syntax-problem.js';

const DEEPEST = 20;
const WIDEST_INDENT = 200;
const MOST_TOKENS = 50_000;
const MOST_KEYS = 5_000;

/** The lexer's own marks, which stand for no text. */
const MARKS: readonly TokenType[] = ['doc-mode', 'flow-error-end', 'scalar'];

const WRITE_DESIGN = 'Give a design file; start one with: pan new';

/**
 * The text's syntax tokens, one document after another. Stops where going on would take very long or overflow
 * the stack (which ends the process, not the parse): deep brackets, long runs of list marks, huge indents,
 * far more keys than any design has. Lexer and parser are plain loops, so they are safe up to there.
 *
 * @throws PanError `input-syntax` with line and column
 */
export function* syntaxTokens(text: string, lines: LineCounter): Generator<CST.Token, void> {
  const parser = new Parser(lines.addNewLine);
  lines.addNewLine(0);
  const count = { tokens: 0, keys: 0, brackets: 0, marks: 0 };
  let offset = 0;
  let lineStart = true;
  for (const lexeme of new Lexer().lex(text)) {
    const type = CST.tokenType(lexeme);
    const indent = lineStart && type === 'space' ? lexeme.length : 0;
    countToken(count, type);
    const trouble = troubleWith(count, indent);
    if (trouble !== null) throw new PanError(syntaxProblem(lines, offset, ...trouble));
    yield* parser.next(lexeme);
    lineStart = lexeme.endsWith('\n');
    if (!MARKS.includes(type)) offset += lexeme.length;
  }
  yield* parser.end();
}

type TokenType = ReturnType<typeof CST.tokenType>;

interface Count {
  tokens: number;
  keys: number;
  brackets: number;
  /** List marks, and keys outside brackets, since the last line break: each nests what follows it. */
  marks: number;
}

const countToken = (count: Count, type: TokenType): void => {
  count.tokens += 1;
  if (type === 'newline') count.marks = 0;
  else if (type === 'seq-item-ind' || type === 'explicit-key-ind') count.marks += 1;
  else if (type === 'flow-seq-start' || type === 'flow-map-start') count.brackets += 1;
  else if (type === 'flow-seq-end' || type === 'flow-map-end')
    count.brackets = Math.max(0, count.brackets - 1);
  else if (type === 'map-value-ind') {
    count.keys += 1;
    if (count.brackets === 0) count.marks += 1;
  }
};

const troubleWith = ({ tokens, keys, brackets, marks }: Count, indent: number): [string, string] | null => {
  if (indent > WIDEST_INDENT)
    return [`This line is indented by ${indent} characters.`, 'Indent by two spaces a step.'];
  if (brackets > DEEPEST || marks > DEEPEST) {
    return [
      `Lists and groups are nested more than ${DEEPEST} deep.`,
      'Look for a bracket that is not closed.',
    ];
  }
  if (tokens > MOST_TOKENS || keys > MOST_KEYS)
    return ['The file holds far more than a design does.', WRITE_DESIGN];
  return null;
};

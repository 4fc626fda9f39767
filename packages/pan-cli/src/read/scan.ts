import { PanError } from 'pan-core';
import { CST, Lexer, LineCounter } from 'yaml';
import { syntaxProblem } from './syntax-problem.js';

const DEEPEST = 20;
const WIDEST_INDENT = 200;
const MOST_TOKENS = 50_000;
const MOST_KEYS = 5_000;

/** The lexer's own marks, which stand for no text. */
const MARKS: readonly ReturnType<typeof CST.tokenType>[] = ['doc-mode', 'flow-error-end', 'scalar'];

const WRITE_DESIGN = 'Give a design file; start one with: pan new';

/**
 * Refuses a text whose parsing would take very long or overflow the stack (which ends the process, not the
 * parse): deep brackets, long runs of list marks, huge indents, far more keys than any design has. The lexer
 * is a plain loop, so it is safe on any text.
 *
 * @throws PanError `input-syntax` with line and column
 */
export const refuseMonster = (text: string): void => {
  let offset = 0;
  let tokens = 0;
  let keys = 0;
  let brackets = 0;
  let marks = 0;
  let lineStart = true;
  const refuse = (message: string, advice: string): never => {
    throw new PanError(syntaxProblem(linesOf(text), offset, message, advice));
  };
  for (const token of new Lexer().lex(text)) {
    tokens += 1;
    const type = CST.tokenType(token);
    switch (type) {
      case 'newline':
        marks = 0;
        break;
      case 'flow-seq-start':
      case 'flow-map-start':
        brackets += 1;
        break;
      case 'flow-seq-end':
      case 'flow-map-end':
        brackets -= 1;
        break;
      case 'seq-item-ind':
      case 'explicit-key-ind':
        marks += 1;
        break;
      case 'map-value-ind':
        keys += 1;
        break;
      case 'space':
        if (lineStart && token.length > WIDEST_INDENT) {
          refuse(`This line is indented by ${token.length} characters.`, 'Indent by two spaces a step.');
        }
        break;
      default:
    }
    if (brackets > DEEPEST || marks > DEEPEST) {
      refuse(
        `Lists and groups are nested more than ${DEEPEST} deep.`,
        'Look for a bracket that is not closed.',
      );
    }
    if (tokens > MOST_TOKENS || keys > MOST_KEYS) {
      refuse('The file holds far more than a design does.', WRITE_DESIGN);
    }
    lineStart = token.endsWith('\n');
    if (!MARKS.includes(type)) offset += token.length;
  }
};

const linesOf = (text: string): LineCounter => {
  const lines = new LineCounter();
  lines.addNewLine(0);
  for (let i = text.indexOf('\n'); i >= 0; i = text.indexOf('\n', i + 1)) lines.addNewLine(i + 1);
  return lines;
};

import type { Problem } from 'pan-core';
import type { LineCounter } from 'yaml';

/** Something the file may not contain, at a character of its text. */
export const syntaxProblem = (
  lines: LineCounter,
  offset: number,
  message: string,
  advice: string,
  path: Problem['path'] = [],
): Problem => {
  const { line, col } = lines.linePos(offset);
  return { code: 'input-syntax', path, message, advice, line: Math.max(line, 1), column: Math.max(col, 1) };
};

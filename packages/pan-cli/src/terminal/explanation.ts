import { PanError, type Problem } from 'pan-core';
import type { ExitCode } from '../commands/command.js';
import { exitCodeOf } from './exit-code.js';
import { problemsData, problemsText } from './problems.js';

export interface Explanation {
  readonly text: string;
  readonly data: object;
  readonly code: ExitCode;
}

const internal = (error: unknown): Problem => ({
  code: 'internal',
  path: [],
  message: `This is a fault in pan itself, not in your file: ${error instanceof Error ? error.message : String(error)}`,
  advice: 'Nothing was decided, and nothing should be cut from it. Please report it with the design file.',
});

/** Whatever was thrown as text, data and exit code; a stack trace helps nobody who builds a pan. */
export const explanation = (error: unknown, file: string, width: number): Explanation => {
  if (error instanceof Error && error.name === 'ExitPromptError') {
    return { text: 'Stopped. Nothing was written.\n', data: { errors: [] }, code: 2 };
  }
  const problems = error instanceof PanError ? error.problems : [internal(error)];
  return {
    text: problemsText(problems, file, width),
    data: problemsData(problems, file),
    code: problems.some(({ code }) => exitCodeOf(code) === 3) ? 3 : 2,
  };
};

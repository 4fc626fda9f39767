import type { ErrorCode } from './error-code.js';

/** One thing wrong, with its place in the design and what to do about it. */
export interface Problem {
  readonly code: ErrorCode;
  /** Keys and list positions from the top of the design file; empty for the file as a whole. */
  readonly path: readonly (string | number)[];
  /** One plain sentence: what is wrong, with number and unit. */
  readonly message: string;
  readonly expected?: string | undefined;
  readonly found?: string | undefined;
  readonly value?: number | undefined;
  readonly limit?: number | undefined;
  readonly unit?: string | undefined;
  /** What to do next, one plain sentence. */
  readonly advice?: string | undefined;
  readonly line?: number | undefined;
  readonly column?: number | undefined;
}

/** The only error this project throws on purpose: one or more problems, all found at once. */
export class PanError extends Error {
  override readonly name = 'PanError';
  readonly problems: readonly Problem[];

  constructor(problems: Problem | readonly Problem[]) {
    const list = Array.isArray(problems) ? (problems as readonly Problem[]) : [problems as Problem];
    super(list.map((p) => p.message).join('\n'));
    this.problems = Object.freeze([...list]);
  }
}

import type { ErrorCode } from 'pan-core';
import type { ExitCode } from '../commands/command.js';

const NOT_WRITTEN: ReadonlySet<ErrorCode> = new Set<ErrorCode>(['file-write', 'file-edited', 'internal']);

/** How the program ends on an error: 3 where something could not be written or it failed itself, else 2. */
export const exitCodeOf = (code: ErrorCode): ExitCode => (NOT_WRITTEN.has(code) ? 3 : 2);

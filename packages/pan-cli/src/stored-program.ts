import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { Script } from 'node:vm';

/** The stored program's file name in the bundle's folder, without its ending. */
declare const PAN_STORED: string;

/** What runs the command line, whichever way it was loaded. */
export interface Program {
  readonly main: (argv: readonly string[]) => Promise<void>;
}

type Body = (exports: Partial<Program>, require: NodeJS.Require, url: string) => void;

/**
 * The same program as the bundle's, with what the engine made of it on the machine that built the package. The engine
 * takes that only where it is the very engine that made it, under the same flags; null everywhere else, and where a file
 * is missing.
 */
export const storedProgram = (url: string): Program | null => {
  try {
    const made = readFileSync(new URL(`./${PAN_STORED}-${process.versions.v8}-${process.arch}.bin`, url));
    const file = new URL(`./${PAN_STORED}.cjs`, url);
    const script = new Script(readFileSync(file, 'latin1'), { filename: file.href, cachedData: made });
    if (script.cachedDataRejected !== false) return null;
    const exports: Partial<Program> = {};
    (script.runInThisContext() as Body)(exports, createRequire(url), url);
    return exports.main === undefined ? null : { main: exports.main };
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return null;
    throw error;
  }
};

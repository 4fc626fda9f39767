import { PanError, type Problem } from 'pan-core';
import { parseYaml } from './parse-yaml.js';
import { placed } from './place.js';
import { readSource } from './source.js';

/** A pan that cannot be built is found long after its file was read, and says which key is at fault and no line. */
const isUnplaced = ({ code, path, line }: Problem): boolean =>
  line === undefined && path.length > 0 && /^(shape|oil|sheet)-/.test(code);

/** The same error with line and column in the design file where only a key is known; any other error as it is. */
export const placedError = async (error: unknown, file: string): Promise<unknown> => {
  if (!(error instanceof PanError) || file === '' || !error.problems.some(isUnplaced)) return error;
  try {
    const parsed = parseYaml(await readSource(file));
    return new PanError(
      error.problems.map((problem) => (isUnplaced(problem) ? placed(problem, parsed) : problem)),
    );
  } catch {
    // The file has gone or changed since: what is known is still worth saying.
    return error;
  }
};

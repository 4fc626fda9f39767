import { readDesignText } from 'pan-cli/read/index.js';
import { checkDesign } from 'pan-core';
import { type Judged, judged } from './judged.js';

/** Reads a design file, checks it when it is told to and it reads, and says how that ended. */
export const judgedDesign = (text: string, check: boolean): Promise<Judged> =>
  judged(
    async () => {
      const read = await readDesignText(text);
      if (check) checkDesign(read);
    },
    ({ line, path, code }) => line === undefined && path.length === 0 && code.startsWith('input-'),
  );

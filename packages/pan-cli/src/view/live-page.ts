import type { PageAssets } from '../report/page-file.js';
import { barePage, pageFile } from '../report/page-file.js';
import type { Shown, Word } from './live-server.js';

/** The page that is shown now, and who changes it. */
export interface LivePage {
  readonly shown: () => Shown;
  /** Reads the file again; gives what every open page should hear. */
  readonly refresh: () => Promise<Word>;
}

/**
 * The page of a design file as it was last good. A fault since then is told over it; before the first good one a
 * bare page tells it.
 *
 * @param read what the page shows
 * @param told the sentences of an error
 */
export const livePage = (
  title: string,
  assets: PageAssets,
  read: () => Promise<Parameters<typeof pageFile>[0]>,
  told: (error: unknown) => readonly string[],
): LivePage => {
  let page = barePage(title, assets);
  let revision = 0;
  let word: Word | null = { kind: 'working' };
  return {
    shown: () => ({ ...page, revision, word }),
    refresh: async () => {
      try {
        page = pageFile(await read(), assets, revision + 1);
        revision += 1;
        word = null;
        return { kind: 'again' };
      } catch (error) {
        word = { kind: 'fault', sentences: told(error) };
        return word;
      }
    },
  };
};

import { basename } from 'node:path';
import { PanError } from 'pan-core';
import { placedError, readDesignFile } from '../read/index.js';
import { pageAssets } from '../report/page-assets.js';
import { pageData } from '../report/page-data.js';
import { explanation } from '../terminal/explanation.js';
import { watchFiles } from '../view/file-watch.js';
import { livePage } from '../view/live-page.js';
import { startLiveServer } from '../view/live-server.js';
import type { Run } from './command.js';

declare const PAN_VERSION: string;

/** Columns of an error over the page. */
const WIDTH = 90;

const portOf = (typed: string | true | undefined): number => {
  if (typed === undefined) return 0;
  const port = /^\d{1,5}$/.test(String(typed)) ? Number(typed) : Number.NaN;
  if (port >= 1024 && port <= 65535) return port;
  throw new PanError({
    code: 'input-option',
    path: [],
    message: `--port is ${String(typed)}; it must be a whole number from 1024 to 65535.`,
    advice: 'Leave --port out and any free port is taken.',
  });
};

/** Until Ctrl-C, or until whoever started it says so. */
const untilStopped = (): Promise<void> =>
  new Promise((stopped) => {
    for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.once(signal, () => stopped());
  });

/** The page of a design, live on this machine alone: it comes again whenever the file is saved. Writes nothing. */
export const view: Run = async ({ file, options }, screen) => {
  const port = portOf(options.port);
  const live = livePage(
    basename(file),
    pageAssets(),
    async () => {
      try {
        return await pageData(await readDesignFile(file), PAN_VERSION);
      } catch (error) {
        throw await placedError(error, file);
      }
    },
    (error) => explanation(error, file, WIDTH).text.trimEnd().split('\n'),
  );
  const server = await startLiveServer(live.shown, port);
  let [busy, again] = [false, false];
  const refresh = async (): Promise<void> => {
    again = true;
    if (busy) return;
    busy = true;
    while (again) {
      again = false;
      server.tell({ kind: 'working' });
      const word = await live.refresh();
      server.tell(word);
      screen.tell(word.kind === 'fault' ? `${word.sentences.join('\n')}\n` : 'Up to date.\n');
    }
    busy = false;
  };
  const unwatch = watchFiles([file], () => void refresh());
  if (screen.json) screen.write(`${JSON.stringify({ url: server.url, file }, null, 2)}\n`);
  else
    screen.write(
      `${server.url}\nOpen it in a browser on this machine. Saving ${file} brings it again; Ctrl-C ends it.\n`,
    );
  void refresh();
  await untilStopped();
  unwatch();
  await server.close();
  return 0;
};

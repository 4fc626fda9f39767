import { PanError } from 'pan-core';
import { pageAssets } from '../report/page-assets.js';
import { pageData } from '../report/page-data.js';
import { pageFile } from '../report/page-file.js';
import { createProgress } from '../terminal/progress.js';
import { holdStop, refuseStandingFile, writeNewFile } from '../write/index.js';
import type { Run } from './command.js';
import { readShowingProgress } from './read-showing-progress.js';

declare const PAN_VERSION: string;

/** Writes the page: one file that shows the pan and answers to its controls. Ends as `pan check` does. */
export const report: Run = async ({ file, options }, screen) => {
  const { out } = options;
  if (typeof out !== 'string') {
    throw new PanError({
      code: 'input-option',
      path: [],
      message: '`pan report` needs --out: the page to write.',
      advice: 'For example: pan report my-pan.yaml --out my-pan.html',
    });
  }
  const replace = options.replace === true;
  refuseStandingFile(out, replace);
  const read = await readShowingProgress(file, screen);
  const progress = createProgress(screen.tell, process.stderr.isTTY === true);
  const data = await pageData(read, PAN_VERSION, progress.show);
  progress.clear();
  const { html } = pageFile(data, pageAssets());
  await holdStop(() => writeNewFile(out, html, replace));
  const { verdict, counts } = data.check;
  const bytes = Buffer.byteLength(html);
  if (screen.json) screen.write(`${JSON.stringify({ page: out, bytes, verdict, counts }, null, 2)}\n`);
  else
    screen.write(
      `Wrote ${out}, ${(bytes / 1e6).toFixed(2)} MB: open it in any browser, no network needed.\n`,
    );
  return verdict === 'fail' || verdict === 'unknown' ? 1 : 0;
};

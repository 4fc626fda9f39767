import { buildPan, checkDesign, cutParts, cutSet, PanError, type Paper, panelsOf, platesOf } from 'pan-core';
import { cutScreen, type SetSummary, stopScreen } from '../terminal/cut-screen.js';
import { createProgress } from '../terminal/progress.js';
import { refuseStandingSet, writeSet } from '../write/index.js';
import { pdfPrinter } from '../write/pdf.js';
import type { ExitCode, Run, Screen } from './command.js';
import { readShowingProgress } from './read-showing-progress.js';

/** `pan cut` with its words understood. */
export interface CutOptions {
  readonly file: string;
  readonly out: string;
  readonly paper: Paper;
  readonly despiteFails: boolean;
  readonly replace: boolean;
}

/**
 * Writes the cut set of a design, whole or not at all. Stops with 1, and writes nothing, while a check
 * fails or cannot be told; with `despiteFails` it writes a set marked on every part, and still ends with 1.
 */
export const cutCommand = async (options: CutOptions, screen: Screen): Promise<ExitCode> => {
  const read = await readShowingProgress(options.file, screen);
  const report = checkDesign(read);
  const open = report.checks.filter((c) => c.status === 'fail' || c.status === 'unknown');
  const ready = open.length === 0;
  if (!ready && !options.despiteFails) {
    if (screen.json) screen.write(dataText({ ready, not_ready: open.map((c) => c.id), folder: null }));
    screen.tell(stopScreen(report, open, screen));
    return 1;
  }
  refuseStandingSet(options.out, options.replace);
  const model = buildPan(read.design);
  const parts = cutParts(read.design, model.profile, platesOf(model), panelsOf(model));
  const print = pdfPrinter();
  const progress = createProgress(screen.tell, process.stderr.isTTY === true);
  // One drawing a part, the templates and the sheets: printing them is most of the time.
  let printed = 0;
  const files = await cutSet(model, parts, report, {
    paper: options.paper,
    print: (pages) => {
      progress.show(printed++ / (parts.length + 2));
      return print(pages);
    },
  });
  progress.clear();
  const written = writeSet(options.out, files, options.replace);
  const manifest = files.find((file) => file.path === 'manifest.json')?.content;
  const content: object = typeof manifest === 'string' ? JSON.parse(manifest) : {};
  if (screen.json) {
    const { folder, replaced, keptAt } = written;
    screen.write(dataText({ folder, replaced, kept_at: keptAt, ...content }));
  } else screen.write(cutScreen(report, parts, open, written, content as SetSummary, screen));
  return ready ? 0 : 1;
};

const dataText = (data: object): string => `${JSON.stringify(data, null, 2)}\n`;

export const cut: Run = async ({ file, options }, screen) => {
  const { out } = options;
  if (typeof out !== 'string') {
    throw new PanError({
      code: 'input-option',
      path: [],
      message: '`pan cut` needs --out: the folder to write the set into.',
      advice: 'For example: pan cut my-pan.yaml --out my-pan-cut',
    });
  }
  return cutCommand(
    {
      file,
      out,
      paper: options.paper === 'Letter' ? 'letter' : 'a4',
      despiteFails: options['despite-fails'] === true,
      replace: options.replace === true,
    },
    screen,
  );
};

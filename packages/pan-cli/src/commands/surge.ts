import { buildPan, createOilSystem, type SurgeReport, surgeReport } from 'pan-core';
import { readDesignFile } from '../read/index.js';
import { surgeCsv } from '../report/surge-csv.js';
import { surgeSvg } from '../report/surge-svg.js';
import { createProgress } from '../terminal/progress.js';
import { surgeScreen } from '../terminal/surge-screen.js';
import { holdStop, refuseStandingFile, writeNewFile } from '../write/index.js';
import type { Run } from './command.js';
import { asTyped } from './in-pan.js';
import { keyedAssumed } from './key-text.js';
import { type Sureness, surenessOf } from './sureness.js';
import { loadsOf, readSurgeChoice, surgeOptionsOf } from './surge-option.js';

/** The report as a program reads it. */
const reportData = (report: SurgeReport, sure: Sureness, files: object): object => ({
  ...report,
  rests_on: sure.rests_on,
  assumed: keyedAssumed(sure.assumed),
  ...files,
});

/**
 * Follows the oil through each manoeuvre, or a log, over time. Nothing is written before every run is over, so
 * that one stopped on the way leaves nothing behind.
 */
export const surge: Run = async (given, screen) => {
  const file = (name: string): string | null => {
    const typed = given.options[name];
    return typeof typed === 'string' ? typed : null;
  };
  const [svg, csv] = [file('svg'), file('csv')];
  const replace = given.options.replace === true;
  const choice = await readSurgeChoice(given);
  for (const one of [svg, csv]) if (one !== null) refuseStandingFile(one, replace);
  const { design, assumed } = await readDesignFile(given.file, { scans: false });
  const loads = loadsOf(design, choice);
  const system = createOilSystem(buildPan(design));
  const progress = createProgress(screen.tell, process.stderr.isTTY === true);
  const report = asTyped(choice.fill === null ? null : 'fill', () =>
    surgeReport(system, loads, {
      ...surgeOptionsOf(design, choice),
      progress: (share) => {
        progress.show(share);
        return true;
      },
    }),
  );
  progress.clear();
  const sure = surenessOf(['in_pan_L', 'surge_s'], 'running', [...assumed, ...report.assumed]);
  const drawn = svg === null ? '' : surgeSvg(report);
  const table = csv === null ? '' : surgeCsv(report);
  await holdStop(() => {
    if (svg !== null) writeNewFile(svg, drawn, replace);
    if (csv !== null) writeNewFile(csv, table, replace);
  });
  screen.write(
    screen.json
      ? `${JSON.stringify(reportData(report, sure, { svg, csv }), null, 2)}\n`
      : surgeScreen(report, sure, screen),
  );
  for (const one of [svg, csv]) if (one !== null) screen.tell(`Wrote ${one}.\n`);
  return 0;
};

import { type CheckReport, checkDesign } from 'pan-core';
import { checkScreen } from '../terminal/check-screen.js';
import type { Run } from './command.js';
import { keyedAssumed, keyedUnknown } from './key-text.js';
import { readShowingProgress } from './read-showing-progress.js';

/** The report as a program reads it: keys end in their unit, and each place in the file is one text. */
const reportData = ({ measureAgain, assumed, unknown, ...report }: CheckReport): object => ({
  ...report,
  assumed: keyedAssumed(assumed),
  unknown: keyedUnknown(unknown),
  measure_again: measureAgain,
});

/** Checks a design: 1 when something fails or must still be measured. */
export const check: Run = async ({ file }, screen) => {
  const report = checkDesign(await readShowingProgress(file, screen));
  screen.write(
    screen.json ? `${JSON.stringify(reportData(report), null, 2)}\n` : checkScreen(report, screen),
  );
  return report.verdict === 'fail' || report.verdict === 'unknown' ? 1 : 0;
};

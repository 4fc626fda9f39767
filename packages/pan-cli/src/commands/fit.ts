import { buildPan, fitReport } from 'pan-core';
import { readDesignFile } from '../read/index.js';
import { fitScreen } from '../terminal/fit-screen.js';
import type { Run } from './command.js';
import { keyedAssumed, keyedUnknown } from './key-text.js';

/** Shows how near everything comes to everything else: 1 when something fails or must still be measured. */
export const fit: Run = async (given, screen) => {
  const read = await readDesignFile(given.file);
  const report = fitReport(read, buildPan(read.design));
  const data = {
    ...report,
    assumed: keyedAssumed(report.assumed),
    unknown: keyedUnknown(report.unknown),
  };
  screen.write(screen.json ? `${JSON.stringify(data, null, 2)}\n` : fitScreen(report, screen));
  return report.verdict === 'fail' || report.verdict === 'unknown' ? 1 : 0;
};

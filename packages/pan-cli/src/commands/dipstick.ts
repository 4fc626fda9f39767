import { buildPan, createOilSystem, dipstickReport } from 'pan-core';
import { readDesignFile } from '../read/index.js';
import { stripSvg } from '../report/strip-svg.js';
import { dipstickScreen } from '../terminal/dipstick-screen.js';
import { refuseStandingFile, writeNewFile } from '../write/index.js';
import type { Run } from './command.js';
import { keyedAssumed, keyedUnknown } from './key-text.js';
import { surenessOf } from './sureness.js';

/** Shows where the dipstick’s marks go; writes the printable strip when asked. */
export const dipstick: Run = async ({ file, options }, screen) => {
  const svg = typeof options.svg === 'string' ? options.svg : null;
  const replace = options.replace === true;
  if (svg !== null) refuseStandingFile(svg, replace);
  const read = await readDesignFile(file, { scans: false });
  const report = dipstickReport(read, createOilSystem(buildPan(read.design)));
  const extra = report.assumed.filter(({ path }) => path.length === 1);
  const sure = surenessOf(['stick_marks', 'stick_table', 'stick_end_mm'], 'stopped', [
    ...read.assumed,
    ...extra,
  ]);
  if (svg !== null) writeNewFile(svg, stripSvg(report), replace);
  const data = {
    ...report,
    rests_on: sure.rests_on,
    assumed: keyedAssumed(sure.assumed),
    unknown: keyedUnknown(report.unknown),
    svg,
  };
  screen.write(screen.json ? `${JSON.stringify(data, null, 2)}\n` : dipstickScreen(report, sure, screen));
  if (svg !== null) screen.tell(`Wrote ${svg}: print it at 100 % and check its 100 mm line.\n`);
  return 0;
};

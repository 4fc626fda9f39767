import { type DistanceSurvey, distancePlan, PanError, type RailSurvey, worksheet } from 'pan-core';
import { readDesignFile } from '../read/index.js';
import { worksheetScreen } from '../terminal/worksheet-screen.js';
import { refuseStandingFile, writeNewFile } from '../write/index.js';
import { pdfPrinter } from '../write/pdf.js';
import type { Run } from './command.js';

/** Residuals as a program reads them. */
const distanceData = (survey: DistanceSurvey | null): object | null =>
  survey === null
    ? null
    : {
        plus_minus_mm: survey.plusMinus,
        critical: survey.critical,
        placed_off_mm: survey.placedOff,
        rows: survey.distances.map(({ holes, measured, residual, redundancy, standardized }) => ({
          holes,
          measured_mm: measured,
          residual_mm: residual,
          redundancy,
          standardized,
        })),
        slips: survey.slips.map(({ holes, measured, by }) => ({ holes, measured_mm: measured, by_mm: by })),
        holes: survey.holes.map(({ at, plusMinus }) => ({ at_mm: at, plus_minus_mm: plusMinus })),
      };

/** Prints the pages to fill in; shows how measured distances go together where the design has them. */
export const worksheetCommand: Run = async ({ file, options }, screen) => {
  const { out } = options;
  if (typeof out !== 'string')
    throw new PanError({
      code: 'input-option',
      path: [],
      message: '`pan worksheet` needs --out: the PDF file to write.',
      advice: 'For example: pan worksheet --out measure.pdf',
    });
  const replace = options.replace === true;
  refuseStandingFile(out, replace);
  const read = file === '' ? null : await readDesignFile(file);
  const rail: RailSurvey | null = read?.rail ?? null;
  const rough = rail?.rough ?? null;
  const plan = rough === null ? null : distancePlan(rough);
  const pages = worksheet({
    paper: options.paper === 'Letter' ? 'letter' : 'a4',
    units: screen.units,
    title: read?.design.title ?? '',
    plan: plan === null || rough === null ? null : { holes: rough.at, pairs: plan.pairs, least: plan.least },
  });
  writeNewFile(out, await pdfPrinter()(pages), replace);
  const data = {
    file: out,
    pages: pages.pages.length,
    measure:
      plan === null
        ? null
        : {
            least_redundancy: plan.least,
            distances: plan.pairs.map(([a, b], i) => ({
              holes: [a + 1, b + 1],
              redundancy: plan.redundancy[i] ?? null,
            })),
          },
    measured: distanceData(rail?.distances ?? null),
  };
  if (screen.json) screen.write(`${JSON.stringify(data, null, 2)}\n`);
  else screen.write(worksheetScreen(plan, rail?.distances ?? null, screen));
  screen.tell(`Wrote ${out}: ${pages.pages.length} pages. Print at 100 %.\n`);
  return (rail?.distances?.slips.length ?? 0) > 0 ? 1 : 0;
};

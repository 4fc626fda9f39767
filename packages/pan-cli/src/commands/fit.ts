import { buildPan, fitReport, PanError, type ShiftRange } from 'pan-core';
import { roomSvg } from '../report/room-svg.js';
import { fitScreen } from '../terminal/fit-screen.js';
import { createProgress } from '../terminal/progress.js';
import { refuseStandingFile, writeNewFile } from '../write/index.js';
import type { Given, Run } from './command.js';
import { keyedAssumed, keyedUnknown } from './key-text.js';
import { optionQuantity, within } from './option-quantity.js';
import { readShowingProgress } from './read-showing-progress.js';

/** How far to look for room either way unless told, and at most, mm. */
const USUAL = 100;
const MOST = 500;

/** @throws PanError `input-option` with everything that is wrong with the two lengths */
const readRange = async (given: Given): Promise<ShiftRange> => {
  const read = async (name: string) =>
    within(await optionQuantity(given.options, name, 'length', 'mm'), name, {
      most: MOST,
      unit: 'mm',
      size: 1,
      advice: `Leave it out for ${USUAL} mm either way.`,
    });
  const [foreAft, height] = [await read('fore-aft'), await read('height')];
  const problems = [foreAft?.problem, height?.problem].filter((one) => one !== undefined);
  if (problems.length > 0) throw new PanError(problems);
  const span = (by: number): readonly [number, number] => [-by, by];
  return { foreAft: span(foreAft?.value ?? USUAL), height: span(height?.value ?? USUAL) };
};

const MOST_TILT = 20;
const MOST_TILTS = 8;

/** Tilts one after another, each with its own unit or the last one's. */
const readTilts = async ({ options }: Given): Promise<readonly number[]> => {
  const typed = options['nose-up'];
  if (typeof typed !== 'string') return [];
  const parts = typed.split(',').map((part) => part.trim());
  const unit = /[a-z°]+$/i.exec(parts[parts.length - 1] ?? '')?.[0] ?? 'deg';
  const read = await Promise.all(
    parts.map((part) => optionQuantity({ 'nose-up': part }, 'nose-up', 'angle', unit)),
  );
  const problems = read.flatMap((one) => (one?.problem === undefined ? [] : [one.problem]));
  const tilts = read.flatMap((one) => (one?.value === undefined ? [] : [one.value]));
  const wide = tilts.some((tilt) => Math.abs(tilt) > (MOST_TILT * Math.PI) / 180);
  if (problems.length === 0 && !wide && tilts.length <= MOST_TILTS) return tilts;
  throw new PanError(
    problems.length > 0
      ? problems
      : [
          {
            code: 'input-option',
            path: [],
            message: `--nose-up takes up to ${MOST_TILTS} tilts between −${MOST_TILT} and ${MOST_TILT} deg.`,
            found: typed.slice(0, 40),
            advice: 'Give them as "1, 2, 4 deg".',
          },
        ],
  );
};

/** Shows how near everything comes to everything else: 1 when something fails or must still be measured. */
export const fit: Run = async (given, screen) => {
  const svg = typeof given.options.svg === 'string' ? given.options.svg : null;
  const replace = given.options.replace === true;
  const [range, tilts] = [await readRange(given), await readTilts(given)];
  if (svg !== null) refuseStandingFile(svg, replace);
  const read = await readShowingProgress(given.file, screen);
  const progress = createProgress(screen.tell, process.stderr.isTTY === true);
  const report = fitReport(read, buildPan(read.design), { range, tilts }, progress.show);
  progress.clear();
  if (svg !== null) writeNewFile(svg, roomSvg(report), replace);
  const data = {
    ...report,
    assumed: keyedAssumed(report.assumed),
    unknown: keyedUnknown(report.unknown),
    svg,
  };
  screen.write(screen.json ? `${JSON.stringify(data, null, 2)}\n` : fitScreen(report, screen));
  if (svg !== null) screen.tell(`Wrote ${svg}.\n`);
  return report.verdict === 'fail' || report.verdict === 'unknown' ? 1 : 0;
};

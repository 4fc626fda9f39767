import {
  buildPan,
  createOilSystem,
  inventoryOf,
  limitsReport,
  oilAtSpeed,
  oilIn,
  PanError,
  type Problem,
  restAnswer,
} from 'pan-core';
import { readDesignFile } from '../read/index.js';
import { limitsSvg } from '../report/limits-svg.js';
import { limitsScreen } from '../terminal/limits-screen.js';
import { refuseStandingFile, writeNewFile } from '../write/index.js';
import type { Given, Run } from './command.js';
import { asTyped, readInPan } from './in-pan.js';
import { keyedAssumed, keyedUnknown } from './key-text.js';
import { readRpm } from './rpm.js';
import { sharedRing } from './shared-ring.js';
import { surenessOf } from './sureness.js';

const USUAL = 72;
const MOST = 720;
const FEWEST = 4;

/** A whole number of directions. */
const readDirections = ({ options }: Given): { readonly count: number; readonly problem?: Problem } => {
  const typed = options.directions;
  if (typeof typed !== 'string') return { count: USUAL };
  const count = /^\d{1,6}$/.test(typed) ? Number(typed) : Number.NaN;
  if (count >= FEWEST && count <= MOST) return { count };
  return {
    count: USUAL,
    problem: {
      code: 'input-option',
      path: [],
      message: `--directions must be a whole number from ${FEWEST} to ${MOST}.`,
      found: typed.slice(0, 40),
      advice: `Leave it out for ${USUAL}, every 5 deg.`,
    },
  };
};

/** Shows how hard the car can be driven in each direction before the mouth bares, and what lifts the worst. */
export const limits: Run = async (given, screen) => {
  const svg = typeof given.options.svg === 'string' ? given.options.svg : null;
  const replace = given.options.replace === true;
  const { count, problem } = readDirections(given);
  const inPan = await readInPan(given, screen);
  const rpm = readRpm(given);
  const problems = [inPan?.problem, problem, rpm.problem].filter((one) => one !== undefined);
  if (problems.length > 0) throw new PanError(problems);
  if (svg !== null) refuseStandingFile(svg, replace);
  const read = await readDesignFile(given.file, { scans: false });
  const { design } = read;
  const system = createOilSystem(buildPan(design));
  const volume = inPan?.value ?? inventoryOf(oilAtSpeed(design.oil, rpm.value)).runningInPan;
  asTyped(inPan === null ? null : 'in-pan', () => restAnswer(system, volume));
  const { ring } = await sharedRing(system, volume, count);
  const report = asTyped(inPan === null ? null : 'in-pan', () =>
    limitsReport(read, system, volume, ring, (manoeuvre) =>
      inPan !== null || rpm.value !== undefined
        ? volume
        : inventoryOf(oilIn(design.oil, manoeuvre)).runningInPan,
    ),
  );
  const sure = surenessOf(
    ['in_pan_L', 'limit_g', 'least_fill_L', 'under_rods_mm'],
    inPan === null ? 'running' : 'typed',
    read.assumed,
  );
  if (svg !== null) writeNewFile(svg, limitsSvg(report), replace);
  screen.write(
    screen.json
      ? `${JSON.stringify({ ...report, rests_on: sure.rests_on, assumed: keyedAssumed(sure.assumed), unknown: keyedUnknown(report.unknown), svg }, null, 2)}\n`
      : limitsScreen(report, sure, screen),
  );
  if (svg !== null) screen.tell(`Wrote ${svg}.\n`);
  return 0;
};

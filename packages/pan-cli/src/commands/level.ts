import {
  buildPan,
  createOilSystem,
  inventoryOf,
  type Load,
  levelReport,
  type OilPlan,
  oilAtSpeed,
  PanError,
  type Problem,
} from 'pan-core';
import { readDesignFile } from '../read/index.js';
import { levelScreen } from '../terminal/level-screen.js';
import type { Given, Run, Screen } from './command.js';
import { asTyped, readInPan } from './in-pan.js';
import { keyedAssumed } from './key-text.js';
import { type OptionValue, optionQuantity, within } from './option-quantity.js';
import { readRpm } from './rpm.js';
import { surenessOf } from './sureness.js';

const MOST_G = 5;

const both = (one: string, other: string): Problem => ({
  code: 'input-option',
  path: [],
  message: `--${one} and --${other} pull opposite ways.`,
  advice: 'Give one of them.',
});

/** One axis of the load from its two options: the first counts positive. */
const axis = async (
  { options }: Given,
  positive: string,
  negative: string,
): Promise<{ readonly g: number; readonly problems: readonly Problem[] }> => {
  const read = async (name: string, other: string): Promise<OptionValue | null> =>
    within(await optionQuantity(options, name, 'acceleration', 'g'), name, {
      most: MOST_G,
      unit: 'g',
      size: 1,
      advice: `For the other way there is --${other}.`,
    });
  const [plus, minus] = [await read(positive, negative), await read(negative, positive)];
  const problems = [plus?.problem, minus?.problem].filter((problem) => problem !== undefined);
  if (plus !== null && minus !== null) problems.push(both(positive, negative));
  return { g: plus?.value ?? -(minus?.value ?? 0), problems };
};

const readLoad = async (
  given: Given,
): Promise<{ readonly load: Load; readonly problems: readonly Problem[] }> => {
  const forward = await axis(given, 'accelerating', 'braking');
  const left = await axis(given, 'left-turn', 'right-turn');
  return {
    load: { forward: forward.g, left: left.g, grade: 0 },
    problems: [...forward.problems, ...left.problems],
  };
};

const isStill = (load: Load): boolean => load.forward === 0 && load.left === 0;

/** Oil on the stick when the car stands; oil left in the pan of a running engine when it moves. */
const usualFill = (oil: OilPlan, load: Load): number => {
  const inventory = inventoryOf(oil);
  return isStill(load) ? inventory.stoppedInPan : inventory.runningInPan;
};

/** Shows where the oil lies, held and settled. */
export const level: Run = async (given: Given, screen: Screen) => {
  const inPan = await readInPan(given, screen);
  const { load, problems } = await readLoad(given);
  const rpm = readRpm(given);
  const all = [inPan?.problem, ...problems, rpm.problem].filter((one) => one !== undefined);
  if (all.length > 0) throw new PanError(all);
  const { design, assumed } = await readDesignFile(given.file, { scans: false });
  const system = createOilSystem(buildPan(design));
  const volume = inPan?.value ?? usualFill(oilAtSpeed(design.oil, rpm.value), load);
  const report = asTyped(inPan === null ? null : 'in-pan', () =>
    levelReport(design, system, volume, load, oilAtSpeed(design.oil, rpm.value)),
  );
  const still = isStill(load);
  const sure = surenessOf(
    [
      'in_pan_L',
      ...(still ? ['surface_mm', 'submergence_mm'] : ['loaded_surface_mm', 'loaded_submergence_mm']),
      'period_s',
      ...(report.held.pickup.critical_mm === null ? [] : ['pool_draw_s', 'critical_mm']),
    ],
    inPan !== null ? 'typed' : still ? 'stopped' : 'running',
    // A body that carries no load does not lean.
    still ? assumed.filter(({ path }) => path[0] !== 'chassis') : assumed,
  );
  screen.write(
    screen.json
      ? `${JSON.stringify({ ...report, rests_on: sure.rests_on, assumed: keyedAssumed(sure.assumed) }, null, 2)}\n`
      : levelScreen(design.title, report, sure, screen),
  );
  return 0;
};

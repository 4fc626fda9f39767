import type { Design, Lid, Manoeuvre } from '../design/index.js';
import { PanError } from '../errors/index.js';
import { createOilSystem, type OilSystem } from '../oil/index.js';
import { buildPan } from '../pan/index.js';
import { coveredCase, type MouthCase } from './mouth-case.js';
import { sweepOverOil } from './sweep.js';

/** Most extra oil that is worth trying, and the step it is rounded up to, mm³. */
const MOST_EXTRA = 3e6;
const OIL_STEP = 0.1e6;
/** Steps in which a lid's edge is moved, mm, and how far a proposed lid stays from the end walls. */
const LID_STEP = 10;
const LID_END = 20;
/** Height kept between running oil and the rods, mm (common practice, no source). */
const UNDER_SWEEP = 25;

/**
 * More oil that covers the mouth in the case and keeps clear of the rods; null when none does.
 *
 * @param likelier the way that is likelier to bare it
 */
export const moreOil = (
  system: OilSystem,
  manoeuvre: Manoeuvre,
  running: number,
  likelier: 'held' | 'settled',
): number | null => {
  const holds = (extra: number): boolean => {
    const volume = running + extra;
    if (volume > system.body.capacity.reduce((a, b) => a + b, 0)) return false;
    return coveredCase(system, manoeuvre, volume, likelier) !== null;
  };
  const clear = (extra: number): boolean => {
    const over = sweepOverOil(system, running + extra);
    return over === null || over >= UNDER_SWEEP;
  };
  let most = MOST_EXTRA;
  while (most > 0 && !clear(most)) most -= 5 * OIL_STEP;
  if (most <= 0 || !holds(most)) return null;
  let [no, yes] = [0, most];
  while (yes - no > OIL_STEP * 1.01) {
    const middle = OIL_STEP * Math.round((no + yes) / 2 / OIL_STEP);
    if (holds(middle)) yes = middle;
    else no = middle;
  }
  return yes;
};

export interface LidAdvice {
  readonly words: string;
  readonly found: MouthCase;
}

/**
 * A longer lid, or a first one, that covers the mouth in the case; null when none of those tried does.
 *
 * @param likelier the way that is likelier to bare it
 */
export const lidThatHolds = (
  design: Design,
  manoeuvre: Manoeuvre,
  volume: number,
  likelier: 'held' | 'settled',
): LidAdvice | null => {
  const rear = design.pan.floor[design.pan.floor.length - 1]?.[0] ?? 0;
  for (const { words, lid } of lidsToTry(design, rear)) {
    const baffles = [...design.baffles.filter((b) => b.name !== lid.name), lid];
    const system = systemOf({ ...design, baffles });
    const found = system === null ? null : coveredCase(system, manoeuvre, volume, likelier);
    if (found !== null) return { words, found };
  }
  return null;
};

const systemOf = (design: Design): OilSystem | null => {
  try {
    return createOilSystem(buildPan(design));
  } catch (error) {
    // A lid that cannot be built there is simply no advice.
    if (error instanceof PanError) return null;
    throw error;
  }
};

const lidsToTry = (design: Design, rear: number): readonly { words: string; lid: Lid }[] => {
  const lids = design.baffles.filter((b): b is Lid => b.kind === 'lid' && b.tray === undefined);
  const [x] = design.pickup.at;
  const over = lids.find(
    (lid) => lid.rear <= x + design.pickup.mouth && lid.front >= x - design.pickup.mouth,
  );
  const stops: number[] = [];
  if (over !== undefined) {
    for (let at = over.rear - LID_STEP; at >= rear + LID_END; at -= 3 * LID_STEP) stops.push(at);
    return stops.map((at) => ({ words: `the lid "${over.name}" to x = ${at}`, lid: { ...over, rear: at } }));
  }
  const step = design.pan.floor.findIndex((p, i) => i > 0 && p[1] > (design.pan.floor[i - 1]?.[1] ?? 0) + 30);
  const top = design.pan.floor[step - 1];
  if (top === undefined) return [];
  const down = Math.round(top[1] + 20);
  for (let at = top[0] - 100; at >= rear + LID_END; at -= 5 * LID_STEP) stops.push(at);
  return stops.map((at) => ({
    words: `a lid ${down} mm down from the step to x = ${at}`,
    lid: {
      kind: 'lid',
      name: 'new lid',
      down,
      rear: at,
      front: top[0],
      span: null,
      fixed: 'bolted',
      thickness: design.pan.sheet.thickness,
      holes: [],
    },
  }));
};

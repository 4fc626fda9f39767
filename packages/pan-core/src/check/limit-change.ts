import type { Design, Lid, Wall } from '../design/index.js';
import { PanError } from '../errors/index.js';
import {
  CLOSE_G,
  createOilSystem,
  type Limit,
  limitToward,
  loadToward,
  type OilSystem,
  rampAnswer,
} from '../oil/index.js';
import { buildPan } from '../pan/index.js';
import { sweepOverOil } from './sweep.js';

/** A change that was tried on the limit in one direction. */
export interface LimitChange {
  readonly kind: 'oil' | 'mouth' | 'lid' | 'wall';
  /** In words, with its size. */
  readonly change: string;
  /** Whether it lifts the limit by `LIFT`. */
  readonly lifts: boolean;
  /** The limit in that direction with it, g; null past the most that is followed. */
  readonly limit: number | null;
  /** How long the settled pool then lasts with no return at the load that bared it, s; null without a pump flow. */
  readonly lasts: number | null;
}

/** How far a limit is to be lifted before a change counts, g. */
export const LIFT = 0.1;
/** Steps and most of each change; mm³ and mm. */
const OIL = { step: 0.1e6, most: 3e6 };
const MOUTH = { step: 1, least: 6 };
const LID = { step: 10, fromEnd: 20 };
const WALL = { step: 5 };
/** Height kept between running oil and the rods, mm (common practice, no source). */
const UNDER_SWEEP = 25;

/** The lesser of the two limits, g; null when neither is reached. */
export const lesser = ({ held, settled }: Pick<Limit, 'held' | 'settled'>): number | null =>
  held === null ? settled : settled === null ? held : Math.min(held, settled);

/** A design and a fill, the size of the change it came from, and the change in words. */
interface Trial {
  readonly design: Design;
  readonly volume: number;
  readonly change: string;
}

/**
 * For each kind of change the smallest of those tried that lifts the limit toward `toward` by `LIFT`, or the best
 * of them where none does: more oil that stays clear of the rods, a lower mouth, a lid's edge moved or a first lid,
 * a wall made higher. A kind of which nothing can be tried is left out.
 */
export const limitChanges = (system: OilSystem, volume: number, limit: Limit): readonly LimitChange[] => {
  const { design } = system.model;
  const now = lesser(limit);
  if (now === null) return [];
  const first = (kind: LimitChange['kind'], trials: Iterable<Trial>): readonly LimitChange[] => {
    let best: LimitChange | null = null;
    for (const trial of trials) {
      const found = tryChange(trial, limit.toward, now, trial.design === design ? system : null);
      if (found === null) continue;
      const tried = { kind, change: trial.change, ...found };
      if (tried.lifts) return [tried];
      if (best === null || (tried.limit ?? 0) > (best.limit ?? 0)) best = tried;
    }
    return best === null ? [] : [best];
  };
  return [
    ...first('oil', oilTrials(design, system, volume)),
    ...first('mouth', mouthTrials(design, volume)),
    ...first('lid', lidTrials(design, system, volume)),
    ...first('wall', wallTrials(design, system, volume)),
  ];
};

const tryChange = (
  { design, volume }: Trial,
  toward: number,
  now: number,
  known: OilSystem | null,
): Pick<LimitChange, 'limit' | 'lasts' | 'lifts'> | null => {
  try {
    const system = known ?? createOilSystem(buildPan(design));
    const limit = lesser(limitToward(system, volume, toward));
    // Both limits are found to within `CLOSE_G`, which must not decide.
    if (limit !== null && limit < now + LIFT - 2 * CLOSE_G) return { lifts: false, limit, lasts: null };
    const { pickup } = rampAnswer(system, volume, loadToward(toward, now), 'settled');
    return { lifts: true, limit, lasts: pickup.drawSeconds };
  } catch (error) {
    // A change that cannot be built or filled is simply no advice.
    if (error instanceof PanError) return null;
    throw error;
  }
};

function* oilTrials(design: Design, system: OilSystem, volume: number): Iterable<Trial> {
  for (let extra = OIL.step; extra <= OIL.most + 1; extra += OIL.step) {
    const filled = volume + extra;
    if (filled > system.body.capacity.reduce((a, b) => a + b, 0)) return;
    const over = sweepOverOil(system, filled);
    if (over !== null && over < UNDER_SWEEP) return;
    yield { design, volume: filled, change: `${(extra / 1e6).toFixed(1)} L more oil` };
  }
}

function* mouthTrials(design: Design, volume: number): Iterable<Trial> {
  for (let gap = design.pickup.gap - MOUTH.step; gap >= MOUTH.least; gap -= MOUTH.step) {
    const by = (design.pickup.gap - gap).toFixed(0);
    yield {
      design: { ...design, pickup: { ...design.pickup, gap } },
      volume,
      change: `the mouth ${by} mm lower, ${gap.toFixed(0)} mm over the floor`,
    };
  }
}

const withBaffle = (design: Design, baffle: Lid | Wall): Design => ({
  ...design,
  baffles: design.baffles.some((b) => b.name === baffle.name)
    ? design.baffles.map((b) => (b.name === baffle.name ? baffle : b))
    : [...design.baffles, baffle],
});

/** Each lid's rear and front edge moved out step by step, all lids together so that the smallest move comes first. */
function* lidTrials(design: Design, system: OilSystem, volume: number): Iterable<Trial> {
  const rear = Math.min(...design.pan.floor.map((p) => p[0]));
  const step = system.model.sumpFront;
  const lids = design.baffles.filter((b): b is Lid => b.kind === 'lid' && b.tray === undefined);
  const room = step - rear - LID.fromEnd;
  for (let by = LID.step; by < room; by += LID.step) {
    for (const lid of lids) {
      const [back, ahead] = [lid.rear - by, lid.front + by];
      const say = (edge: string, x: number): string =>
        `the ${edge} edge of "${lid.name}" ${by} mm farther out, at x ${x.toFixed(0)}`;
      if (back >= rear + LID.fromEnd)
        yield { design: withBaffle(design, { ...lid, rear: back }), volume, change: say('rear', back) };
      if (ahead <= step)
        yield { design: withBaffle(design, { ...lid, front: ahead }), volume, change: say('front', ahead) };
    }
    if (lids.length === 0) {
      const lid = firstLid(design, system, by);
      const change = `a lid ${lid.down.toFixed(0)} mm down from the step to x ${lid.rear.toFixed(0)}`;
      yield { design: withBaffle(design, lid), volume, change };
    }
  }
}

/** A first lid from the step rearward, a little under the shallow's floor. */
const firstLid = (design: Design, system: OilSystem, length: number): Lid => {
  const front = system.model.sumpFront;
  const top = design.pan.floor.findLast((p) => p[0] >= front)?.[1] ?? 0;
  const shallow = Math.min(...design.pan.floor.filter((p) => p[0] >= front).map((p) => p[1]), top);
  return {
    kind: 'lid',
    name: 'new lid',
    down: Math.round(shallow + 20),
    rear: front - length,
    front,
    span: null,
    fixed: 'bolted',
    thickness: design.pan.sheet.thickness,
    holes: [],
  };
};

/** Each wall made higher step by step, up to the rail. */
function* wallTrials(design: Design, system: OilSystem, volume: number): Iterable<Trial> {
  const walls = system.model.barriers.flatMap(({ baffle, top }) =>
    baffle.kind === 'wall' ? [{ wall: baffle, top }] : [],
  );
  const deepest = Math.max(0, ...walls.map(({ top }) => top));
  for (let by = WALL.step; by < deepest; by += WALL.step) {
    for (const { wall, top } of walls) {
      if (top - by <= 0) continue;
      yield {
        design: withBaffle(design, { ...wall, topDown: top - by }),
        volume,
        change: `the top of "${wall.name}" ${by} mm higher, ${(top - by).toFixed(0)} mm down`,
      };
    }
  }
}

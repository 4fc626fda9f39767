import type { Box, Crank, Engine, Item, Point3, Rod } from '../design.js';
import type { DesignKeys } from '../keys/design-keys.js';
import type { Notes } from './notes.js';
import { needsSide, type ResolvedRail, resolveRail } from './rail.js';
import type { DrawingDesk } from './rail-drawing.js';

type EngineKeys = DesignKeys['engine'];

export const resolveEngine = (
  keys: EngineKeys,
  desk: DrawingDesk,
  notes: Notes,
): { readonly engine: Engine; readonly survey: ResolvedRail['survey'] } => {
  const path = ['engine'];
  const page = { keys: keys.rail, holeKeys: keys.rail_holes, pumpInlet: keys.pump_inlet };
  const { rail, holes: railHoles, survey } = resolveRail(page, desk, notes);
  if (rail.seenFrom === null && needsSide(keys.rail, railHoles)) {
    notes.lack(
      [...path, 'rail', 'seen_from'],
      'the side the rail was traced from',
      'whether the pan is mirrored',
    );
  }
  const engine: Engine = {
    rail,
    railHoles,
    crankcaseTop: keys.crankcase_top,
    crankcaseDisplaced: notes.take(
      keys.crankcase_displaced,
      [...path, 'crankcase_displaced'],
      'share',
      'crankcase displaced',
    ),
    crank: resolveCrank(keys.crank, notes),
    inside: (keys.inside ?? []).map(itemOf),
    tilt: resolveTilt(keys.tilt, notes),
    topAboveRail: keys.top_above_rail ?? null,
    pumpInlet: keys.pump_inlet ?? null,
    carries: (keys.carries ?? []).map(itemOf),
    plusMinus: notes.take(keys.plus_minus, [...path, 'plus_minus'], 'length', 'engine plus or minus'),
    studs: keys.studs ?? 0,
    mounts: keys.mounts ?? null,
    flywheel: keys.flywheel ?? null,
    bellHousing: keys.bell_housing ?? null,
  };
  return { engine, survey };
};

const resolveCrank = (keys: EngineKeys['crank'], notes: Notes): Crank | null => {
  const path = ['engine', 'crank'];
  const needed = 'whether a rod meets the pan or the oil';
  if (keys === null || keys === undefined) {
    notes.lack(path, 'the sweep of the rods', needed);
    return null;
  }
  const { centre_above_rail, stroke, big_end_reach, throws } = keys;
  const sweep = { centre_above_rail, stroke, big_end_reach };
  for (const [key, value] of Object.entries(sweep)) {
    if (typeof value !== 'number') notes.lack([...path, key], `the sweep of the rods (${key})`, needed);
  }
  if (throws === null || throws === undefined) {
    notes.lack([...path, 'throws'], 'where the throws are along the crank', needed);
  }
  if (
    typeof centre_above_rail !== 'number' ||
    typeof stroke !== 'number' ||
    typeof big_end_reach !== 'number'
  )
    return null;
  return {
    centreAboveRail: centre_above_rail,
    stroke,
    bigEndReach: big_end_reach,
    throws: throws ?? null,
    throwWidth: notes.take(keys.throw_width, [...path, 'throw_width'], 'length', 'throw width'),
  };
};

const resolveTilt = (keys: EngineKeys['tilt'], notes: Notes): Engine['tilt'] => {
  const path = ['engine', 'tilt'];
  const needed = 'where the oil lies and where the car is';
  if (keys === null || keys === undefined) {
    notes.lack(path, 'how the engine sits in the car', needed);
    return null;
  }
  const { nose_up, lean_left } = keys;
  for (const [key, value] of Object.entries({ nose_up, lean_left })) {
    if (typeof value !== 'number')
      notes.lack([...path, key], `how the engine sits in the car (${key})`, needed);
  }
  return typeof nose_up === 'number' && typeof lean_left === 'number'
    ? { noseUp: nose_up, leanLeft: lean_left }
    : null;
};

type Corners = readonly [Point3, Point3];

export const boxOf = ([a, b]: Corners): Box => ({
  kind: 'box',
  min: [Math.min(a[0], b[0]), Math.min(a[1], b[1]), Math.min(a[2], b[2])],
  max: [Math.max(a[0], b[0]), Math.max(a[1], b[1]), Math.max(a[2], b[2])],
});

export const rodOf = (
  [from, to]: Corners,
  diameter: number,
  travel: Point3 = [0, 0, 0],
  positions: readonly Corners[] = [],
): Rod => ({
  kind: 'rod',
  from,
  to,
  diameter,
  travel,
  ...(positions.length === 0 ? {} : { positions }),
});

interface ItemKeys {
  readonly name: string;
  readonly box: Corners | undefined;
  readonly rod: Corners | undefined;
  readonly diameter: number | undefined;
}

const itemOf = ({ name, box, rod, diameter }: ItemKeys): Item => ({
  name,
  shape: rod === undefined ? boxOf(box as Corners) : rodOf(rod, diameter as number),
});

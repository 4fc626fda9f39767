import { PanError } from 'pan-core';
import {
  createOilSystem,
  type OilAnswer,
  type OilSystem,
  rampAnswer,
  restAnswer,
} from 'pan-core/oil/index.js';
import { buildPan, type PanModel } from 'pan-core/pan/index.js';
import { gridOf } from './basins.js';
import { cubesOf } from './cubes.js';
import { type Answer, oilOnGrid, type Task } from './ramp.js';
import type { Sketch } from './sketch.js';
import { designOf, GAP } from './sketch-design.js';
import { spaceOf } from './sketch-space.js';
import type { Point } from './space.js';

export const STATES = ['rest', 'held', 'settled'] as const;
export type State = (typeof STATES)[number];

/** The mouth's pool by the library and by the grid, coarse to fine; litres. */
export interface Pair {
  readonly library: number;
  readonly grids: readonly number[];
}

export interface Comparison {
  readonly name: string;
  readonly oil: number;
  readonly states: Readonly<Record<State, Pair>>;
  /** Pools of the library after the manoeuvre, settled. */
  readonly pools: number;
  /**
   * Whether the mouth’s pool parts or joins, or moves by more than a layer of cubes, as the sills move by one cube: no
   * grid can tell which way such a pan goes. Asked only of those that differ, as it takes six more runs.
   */
  readonly hangsOnASill: () => boolean;
}

export interface Fineness {
  readonly cells: readonly [number, number, number];
  readonly steps: readonly [number, number, number];
}

const LITRE = 1e6;
/** A pool, or a change of one, counts from this part of the oil. */
const COUNTS = 0.03;

const mouthOf = ({ pools }: OilAnswer): number => (pools.find((pool) => pool.hasPickup)?.volume ?? 0) / LITRE;

/** The box around the cell that the mouth lies in: which pool is asked for, not how it is found. */
const roomOf = (model: PanModel): readonly [Point, Point] => {
  const points = model.cells[model.mouth.cell]!.faces.flatMap((face) => face.loop);
  const corner = (pick: (...values: number[]) => number): Point => [
    pick(...points.map((p) => p[0])),
    pick(...points.map((p) => p[1])),
    pick(...points.map((p) => p[2])),
  ];
  return [corner(Math.min), corner(Math.max)];
};

/** The library's pan, or null where it refuses the shape for a reason of its own. */
const systemOf = (sketch: Sketch): OilSystem | null => {
  try {
    return createOilSystem(buildPan(designOf(sketch)));
  } catch (error) {
    if (error instanceof PanError && error.problems.every((one) => one.code.startsWith('shape-')))
      return null;
    throw error;
  }
};

const byLibrary = (system: OilSystem, sketch: Sketch, oil: number): Readonly<Record<State, number>> => {
  const { grade } = sketch.attitude;
  const loads = sketch.path.map((one) => ({ ...one, grade }));
  const via = loads.slice(0, -1);
  const load = loads[loads.length - 1]!;
  return {
    rest: mouthOf(restAnswer(system, oil, grade)),
    held: mouthOf(rampAnswer(system, oil, load, 'held', via)),
    settled: mouthOf(rampAnswer(system, oil, load, 'settled', via)),
  };
};

/** Number of strips along the pan in which crests are moved against each other. */
const STRIPS = 7;

/** Some sills against the others, a cube up and a cube down: those at plates, and the crests of every second strip. */
const sillShifts = (by: number, length: number): readonly NonNullable<Task['raised']>[] =>
  [by, -by].flatMap((shift): NonNullable<Task['raised']>[] => [
    ({ plate }) => (plate ? shift : 0),
    ({ plate, x }) => (!plate && Math.floor((STRIPS * x) / length) % 2 === 0 ? shift : 0),
    ({ plate, x }) => (!plate && Math.floor((STRIPS * x) / length) % 2 === 1 ? shift : 0),
  ]);

/** Both answers for one sketch; null where the library refuses its shape or the oil does not reach the mouth. */
export const compare = (name: string, sketch: Sketch, fineness: Fineness): Comparison | null => {
  const system = systemOf(sketch);
  if (system === null) return null;
  const { model } = system;
  const below = model.volumes.reduce(
    (sum, volume, i) => sum + (model.cells[i]!.zone === 'crankcase' ? 0 : volume),
    0,
  );
  const oil = below * sketch.fillShare;
  const space = spaceOf(sketch, GAP, roomOf(model));
  const task = (steps: number): Task => ({ attitude: sketch.attitude, path: sketch.path, oil, steps });
  const grids = fineness.cells.map((cell) => gridOf(space, cubesOf(space, cell)));
  const answers = grids.flatMap((grid, i) => oilOnGrid(grid, task(fineness.steps[i]!)) ?? []);
  if (answers.length < grids.length) return null;
  const finest = fineness.cells[2];
  const layer = finest * sketch.length * sketch.width;
  const usual = answers[1]!;
  const count = (answer: Answer, state: State): number =>
    answer[state].pools.filter((volume) => volume > COUNTS * oil).length;
  const parts = (one: Answer, other: Answer, state: State): boolean => {
    const moved = Math.abs(one[state].mouth - other[state].mouth);
    return moved > layer || (moved > COUNTS * oil && count(one, state) !== count(other, state));
  };
  const library = byLibrary(system, sketch, oil);
  const pair = (state: State): Pair => ({
    library: library[state],
    grids: answers.map((answer) => answer[state].mouth / LITRE),
  });
  return {
    name,
    oil: oil / LITRE,
    states: { rest: pair('rest'), held: pair('held'), settled: pair('settled') },
    pools: answers[2]!.settled.pools.length,
    hangsOnASill: () =>
      sillShifts(finest, sketch.length)
        .map((raised) => oilOnGrid(grids[1]!, { ...task(fineness.steps[1]), raised }))
        .some((one) => STATES.some((state) => one === null || parts(usual, one, state))),
  };
};

/** What the grid cannot tell from no difference: a fiftieth of the oil, or what its last halving still changed. */
export const allowed = (one: Comparison, state: State): number => {
  const { grids } = one.states[state];
  return Math.max(0.02 * one.oil, Math.abs(grids[2]! - grids[1]!));
};

export const line = (one: Comparison, state: State): string => {
  const { library, grids } = one.states[state];
  const litres = (value: number): string => value.toFixed(4);
  return `${one.name} ${state}: ${litres(library)} L of ${litres(one.oil)}, by the grid ${grids.map(litres).join(', ')}`;
};

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
  /** How far the mouth’s pool moves when every sill is raised by one cube of the finest grid. */
  readonly moved: number;
}

export interface Comparison {
  readonly name: string;
  readonly oil: number;
  /** A layer one cube of the finest grid deep over the whole plan, litres. */
  readonly layer: number;
  readonly states: Readonly<Record<State, Pair>>;
  /** Pools of the library after the manoeuvre, settled. */
  readonly pools: number;
}

export interface Fineness {
  readonly cells: readonly [number, number, number];
  readonly steps: readonly [number, number, number];
}

const LITRE = 1e6;

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

/** Both answers for one sketch; null when the library refuses its shape. */
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
  const answers = grids.map((grid, i): Answer => oilOnGrid(grid, task(fineness.steps[i]!)));
  const finest = fineness.cells[2];
  const raised = oilOnGrid(grids[1]!, { ...task(fineness.steps[1]), raised: finest });
  const library = byLibrary(system, sketch, oil);
  const pair = (state: State): Pair => ({
    library: library[state],
    grids: answers.map((answer) => answer[state].mouth / LITRE),
    moved: Math.abs(raised[state].mouth - answers[1]![state].mouth) / LITRE,
  });
  return {
    name,
    oil: oil / LITRE,
    layer: (finest * sketch.length * sketch.width) / LITRE,
    states: { rest: pair('rest'), held: pair('held'), settled: pair('settled') },
    pools: answers[2]!.settled.pools.length,
  };
};

/** Pans whose pools hang on one sill: raised by one cube, the mouth's pool changes by more than a layer of cubes. */
export const hangsOnASill = ({ states, layer }: Comparison): boolean =>
  STATES.some((state) => states[state].moved > layer);

/** What the grid cannot tell from no difference: a hundredth of the oil, or what its last halving still changed. */
export const allowed = (one: Comparison, state: State): number => {
  const { grids } = one.states[state];
  return Math.max(0.01 * one.oil, Math.abs(grids[2]! - grids[1]!));
};

export const line = (one: Comparison, state: State): string => {
  const { library, grids } = one.states[state];
  const litres = (value: number): string => value.toFixed(4);
  return `${one.name} ${state}: ${litres(library)} L of ${litres(one.oil)}, by the grid ${grids.map(litres).join(', ')}`;
};

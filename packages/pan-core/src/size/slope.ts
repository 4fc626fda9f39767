import type { SizeProblem } from './problem.js';
import { ask, type Search, type Trial } from './trial.js';
import type { Row } from './verdict.js';

/** Change per unit of each coordinate, up and down; the second is of going down, so a straight line has up = −down. */
export interface Slope {
  readonly up: readonly number[];
  readonly down: readonly number[];
}

/** How cost and margins change from a place along each coordinate, up and down, per unit of it. */
export interface Slopes {
  readonly cost: Slope;
  /** By check id, for those present on every side. */
  readonly rows: ReadonlyMap<string, Slope>;
  /** Room from the place to the ends of the cube, 0 where that side cannot be built. */
  readonly room: Slope;
  readonly trials: readonly Trial[];
}

/** One-sided differences on both sides of a place, because checks have kinks where another thing begins to bind. */
export function* slopesAt(problem: SizeProblem, base: Trial, reach: number): Search<Slopes> {
  const { at } = base;
  const side = (way: 1 | -1) =>
    at.map((x, i) => {
      const to = Math.max(0, Math.min(1, x + way * reach));
      return { i, step: Math.abs(to - x), place: at.map((v, k) => (k === i ? to : v)) };
    });
  const asked = [...side(1), ...side(-1)].map((one) => ({ ...one, asked: one.step > reach / 1000 }));
  const answers = yield* ask(
    problem,
    asked.filter((one) => one.asked).map(({ place }) => place),
  );
  let next = 0;
  const seen = asked.map((one) => {
    const trial = one.asked ? (answers[next++] as Trial) : null;
    return trial === null || trial.verdict.broken !== null ? null : { trial, step: one.step };
  });
  const n = at.length;
  const along = (of: (trial: Trial) => number | undefined): { up: number[]; down: number[] } => {
    const here = of(base) ?? 0;
    const slope = (k: number): number | null => {
      const one = seen[k];
      const there = one == null ? undefined : of(one.trial);
      return one == null || there === undefined ? null : (there - here) / one.step;
    };
    const up = at.map((_, i) => slope(i));
    const down = at.map((_, i) => slope(n + i));
    // Where one side is not to be had, the other's slope is all there is to go by.
    return {
      up: up.map((s, i) => s ?? -(down[i] ?? 0)),
      down: down.map((s, i) => s ?? -(up[i] ?? 0)),
    };
  };
  const rows = new Map(
    base.verdict.rows.map(({ id }) => [id, along((trial) => marginIn(trial.verdict.rows, id))] as const),
  );
  return {
    cost: along((trial) => trial.verdict.cost),
    rows,
    room: {
      up: at.map((x, i) => (seen[i] === null ? 0 : 1 - x)),
      down: at.map((x, i) => (seen[n + i] === null ? 0 : x)),
    },
    trials: answers,
  };
}

const marginIn = (rows: readonly Row[], id: string): number | undefined =>
  rows.find((row) => row.id === id)?.margin;

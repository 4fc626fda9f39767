import { solveLinear } from '../numeric/index.js';
import type { Slope, Slopes } from './slope.js';
import type { Trial } from './trial.js';
import type { Verdict } from './verdict.js';

/** A place, its slopes, the checks that stop a design and how far the slopes are trusted. */
export interface Near {
  readonly base: Trial;
  readonly slopes: Slopes;
  readonly binding: ReadonlySet<string>;
  readonly reach: number;
}

/** Room a check has left at the place, from its id and its margin there. */
export type Room = (id: string, margin: number, slope: Slope) => number;

/** The step that lowers the cost most by the straight-line models, with every binding check kept within its room. */
export const bestStep = ({ base, slopes, binding, reach }: Near, room: Room): readonly number[] => {
  const n = base.at.length;
  const rows: number[][] = [];
  const bounds: number[] = [];
  for (const { id, margin } of base.verdict.rows) {
    const slope = slopes.rows.get(id);
    if (!binding.has(id) || slope === undefined) continue;
    rows.push([...slope.up, ...slope.down].map((s) => -s));
    bounds.push(room(id, margin, slope));
  }
  const limits = [...slopes.room.up, ...slopes.room.down].map((most) => Math.min(most, reach));
  limits.forEach((limit, k) => {
    rows.push(limits.map((_, j) => (j === k ? 1 : 0)));
    bounds.push(limit);
  });
  const { x } = solveLinear({ cost: [...slopes.cost.up, ...slopes.cost.down], rows, bounds });
  return base.at.map((_, i) => (x[i] as number) - (x[n + i] as number));
};

/** What a straight line from the place says of a step. */
export const alongStep = ({ up, down }: Slope, step: readonly number[]): number =>
  step.reduce((all, d, i) => all + (d > 0 ? (up[i] as number) * d : (down[i] as number) * -d), 0);

/** Margins after a step that turned out otherwise than foretold: the bend of the true limits is taken in. */
export const bentMargins =
  (step: readonly number[], { rows }: Verdict): Room =>
  (id, margin, slope) => {
    const there = rows.find((row) => row.id === id)?.margin;
    return there === undefined ? margin : margin + (there - margin - alongStep(slope, step));
  };

/** Margins that still hold after each coordinate has been moved by up to the given amounts. */
export const withSlack =
  (amounts: readonly number[]): Room =>
  (_, margin, { up, down }) =>
    margin -
    1e-3 -
    amounts.reduce(
      (all, d, i) => all + d * Math.max(Math.abs(up[i] as number), Math.abs(down[i] as number)),
      0,
    );

import { marginOf } from '../check/index.js';
import { solveLinear } from '../numeric/index.js';
import type { Found } from './polish.js';
import type { SizeProblem } from './problem.js';
import type { Row } from './verdict.js';

/** What a little of something is worth to the goal at the answer. */
export interface Worth {
  /** A check whose limit moves, or a value at the end of its range. */
  readonly what: string;
  readonly kind: 'limit' | 'range';
  /** How much of it, in `unit`. */
  readonly amount: number;
  readonly unit: string;
  /** By how much the goal's figure gets better, in the goal's unit; never negative. */
  readonly gain: number;
}

/** As little as a builder would haggle over, by unit. */
const LITTLE: Readonly<Record<string, number>> = { mm: 1, L: 0.1, g: 0.1, deg: 1, s: 0.5 };

/** Nearer than this to its limit, in the scale of margins, a check is taken to bind. */
const BINDS = 0.02;

/**
 * Shadow prices of the linear program about the answer: what one step of each limit that binds, or of each
 * range's end, would gain. True for small changes only (Fletcher, Practical Methods of Optimization, 2nd ed.,
 * section 9.1: Lagrange multipliers as rates of change).
 */
export const worthOf = (problem: SizeProblem, { best, slopes, binding }: Found): readonly Worth[] => {
  if (slopes === null || best.verdict.miss > 0) return [];
  const near = best.verdict.rows.filter(
    ({ id, margin }) => binding.has(id) && margin < BINDS && slopes.rows.has(id),
  );
  const n = best.at.length;
  const ends = problem.freedoms.flatMap((one, i) => {
    const x = best.at[i] as number;
    return [
      ...(x > 1 - BINDS / 2 ? [{ one, column: i }] : []),
      ...(x < BINDS / 2 ? [{ one, column: n + i }] : []),
    ];
  });
  const unitRow = (column: number): number[] =>
    Array.from({ length: 2 * n }, (_, k) => (k === column ? 1 : 0));
  const free = Array.from({ length: 2 * n }, (_, k) => k).filter(
    (k) => !ends.some(({ column }) => column === k),
  );
  const rows = [
    ...near.map(({ id }) => {
      const slope = slopes.rows.get(id);
      return [...(slope?.up ?? []), ...(slope?.down ?? [])].map((s) => -s);
    }),
    ...ends.map(({ column }) => unitRow(column)),
    ...free.map(unitRow),
  ];
  const bounds = [...near.map(() => 0), ...ends.map(() => 0), ...free.map(() => 1)];
  const { worth } = solveLinear({ cost: [...slopes.cost.up, ...slopes.cost.down], rows, bounds });
  const limits = near.map((row, k) => limitWorth(problem, row, worth[k] as number));
  const ranges = ends.map(({ one }, k): Worth => {
    const volume = one.kind === 'volume';
    const amount = volume ? 0.1 : one.kind === 'factor' ? 0.01 : 1;
    const share = (volume ? amount * 1e6 : amount) / (one.to - one.from || 1);
    return {
      what: one.name,
      kind: 'range',
      amount,
      unit: volume ? 'L' : one.kind === 'factor' ? '' : 'mm',
      gain: (worth[near.length + k] as number) * share * problem.goal.scale,
    };
  });
  return [...limits, ...ranges].filter(({ gain }) => gain > 1e-6).sort((a, b) => b.gain - a.gain);
};

const limitWorth = ({ goal }: SizeProblem, { id, unit, limit }: Row, worth: number): Worth => {
  const amount = LITTLE[unit] ?? 1;
  return {
    what: id,
    kind: 'limit',
    amount,
    unit,
    gain: worth * marginOf(amount, unit, limit ?? 0) * goal.scale,
  };
};

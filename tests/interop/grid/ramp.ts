import { type Basins, basinsOf, type Grid, type Passing } from './basins.js';
import { type Acceleration, type Attitude, upOf } from './gravity.js';
import { levelOf, poolsOf } from './pools.js';
import { type Stock, shareBelow, stockOf, volumeBelow } from './stock.js';

export interface Task {
  readonly attitude: Attitude;
  /** Passed through in order, from rest. */
  readonly path: readonly Acceleration[];
  readonly oil: number;
  readonly steps: number;
  /** mm by which a sill is raised, to see whether the pools hang on it. */
  readonly raised?: (sill: { readonly plate: boolean; readonly x: number }) => number;
}

export interface Outcome {
  /** Volume of the pool that the mouth stands in, mm³. */
  readonly mouth: number;
  /** Volumes of all pools, greatest first, mm³. */
  readonly pools: readonly number[];
  /** Area of the mouth's pool's surface seen along gravity, mm². */
  readonly surface: number;
}

export interface RestOutcome extends Outcome {
  /** Oil in hollows that cannot drain to the mouth, mm³. */
  readonly kept: number;
}

const HELD: Passing = { open: ['edge', 'hole'], doors: false };
const SETTLED: Passing = { open: ['edge', 'hole', 'weep'], doors: true };
const REST: Passing = { open: ['edge', 'hole', 'weep', 'forward', 'rearward'], doors: false };

/** Hollows less deep than this share of a cube are roughness of the grid. */
const ROUGH = 0.5;
const STEP = 0.25;

/** Oil in every cube, mm³, and which pool it is of (−1: dry). */
interface Lie {
  readonly oil: Float64Array;
  readonly pool: Int32Array;
  readonly volumes: readonly number[];
}

const look = (
  grid: Grid,
  task: Task,
  at: Acceleration,
  passing: Passing,
): { basins: Basins; stock: Stock } => {
  const { size } = grid.cubes.frame;
  const found = basinsOf(grid, upOf(task.attitude, at), passing, ROUGH * size[0]);
  const by = task.raised ?? (() => 0);
  const basins = {
    ...found,
    saddles: found.saddles.map((one) => ({ ...one, sill: one.sill + by(one) })),
    doors: found.doors.map((one) => ({ ...one, sill: one.sill + by(one) })),
  };
  return { basins, stock: stockOf(grid, basins, STEP * size[0]) };
};

/** For each hollow, the height that oil must reach on the easiest way from it to the mouth's hollow. */
const lipsTo = (mouth: number, { count, saddles }: Basins): readonly number[] => {
  const lip = new Array<number>(count).fill(Infinity);
  lip[mouth] = -Infinity;
  for (let turn = 0; turn < count; turn++) {
    for (const { a, b, sill } of saddles) {
      lip[a] = Math.min(lip[a]!, Math.max(lip[b]!, sill));
      lip[b] = Math.min(lip[b]!, Math.max(lip[a]!, sill));
    }
  }
  return lip;
};

/** Where oil lies before the manoeuvre: hollows that cannot drain are full to their lips, the rest is the mouth's. */
const rest = (grid: Grid, task: Task): { lie: Lie; outcome: RestOutcome } | null => {
  const { basins, stock } = look(grid, task, { forward: 0, left: 0 }, REST);
  const home = basins.hollow[grid.mouth] as number;
  const lips = lipsTo(home, basins);
  const levelAt = (k: number, level: number): number =>
    lips[k] === Infinity ? -Infinity : Math.max(lips[k]!, level);
  const held = (level: number): number =>
    stock.below.reduce((sum, row, k) => sum + volumeBelow(stock, row, levelAt(k, level)), 0);
  let low = stock.low;
  let high = stock.low + stock.step * stock.bins;
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (held(middle) < task.oil) low = middle;
    else high = middle;
  }
  if (held(high) < task.oil - 1 || held(stock.low) > task.oil) return null;
  const joined = basins.saddles.length === 0 ? [home] : lips.flatMap((lip, k) => (lip <= high ? [k] : []));
  const mouth = joined.reduce((sum, k) => sum + volumeBelow(stock, stock.below[k]!, high), 0);
  const others = lips.flatMap((_, k) =>
    joined.includes(k) ? [] : [volumeBelow(stock, stock.below[k]!, levelAt(k, high))],
  );
  const volumes = [mouth, ...others];
  const lie = lay(grid, basins, volumes, (k) => {
    const name = joined.includes(k) ? 0 : 1 + lips.slice(0, k).filter((_, i) => !joined.includes(i)).length;
    return { pool: name, level: levelAt(k, high) };
  });
  const kept = others.reduce((sum, one) => sum + one, 0);
  const surface = surfaceOf(stock, joined, high);
  return { lie, outcome: { mouth, pools: [...volumes].sort((a, b) => b - a), kept, surface } };
};

/** The pool with most oil in the mouth's room; −1 when that is dry. */
const poolAtMouth = (grid: Grid, { oil, pool }: Lie): number => {
  const { centre, frame } = grid.cubes;
  const [low, high] = frame.space.mouthRoom;
  const found = new Map<number, number>();
  for (let i = 0; i < oil.length; i++) {
    if (oil[i] === 0) continue;
    const within = ([0, 1, 2] as const).every(
      (a) => centre[3 * i + a]! > low[a] && centre[3 * i + a]! < high[a],
    );
    if (within) found.set(pool[i]!, (found.get(pool[i]!) ?? 0) + oil[i]!);
  }
  return [...found].reduce((best, one) => (one[1] > best[1] ? one : best), [-1, 0] as [number, number])[0];
};

const surfaceOf = (stock: Stock, hollows: readonly number[], level: number): number =>
  hollows.reduce((sum, k) => {
    const row = stock.below[k] as Float64Array;
    const [a, b] = [level - stock.step, level + stock.step];
    return sum + (volumeBelow(stock, row, b) - volumeBelow(stock, row, a)) / (b - a);
  }, 0);

const lay = (
  grid: Grid,
  basins: Basins,
  volumes: readonly number[],
  told: (hollow: number) => { pool: number; level: number },
): Lie => {
  const byHollow = Array.from({ length: basins.count }, (_, k) => told(k));
  const oil = new Float64Array(grid.cubes.count);
  const pool = new Int32Array(grid.cubes.count).fill(-1);
  for (let i = 0; i < grid.cubes.count; i++) {
    const own = byHollow[basins.hollow[i] as number];
    if (own === undefined) continue;
    const share = shareBelow(basins, i, own.level);
    if (share === 0) continue;
    oil[i] = share * grid.cubes.volume[i]!;
    pool[i] = own.pool;
  }
  return { oil, pool, volumes };
};

/**
 * Shares out the oil of the old pools among the hollows of a new direction, cube by cube. Crumbs that a pool leaves
 * across a lip only because cubes are coarse stay with its greater part.
 */
const poured = (grid: Grid, lie: Lie, basins: Basins, crumb: number): number[] => {
  const parts = lie.volumes.map(() => new Float64Array(basins.count));
  for (let i = 0; i < grid.cubes.count; i++) {
    const from = lie.pool[i] as number;
    const into = basins.hollow[i] as number;
    if (from >= 0 && into >= 0) parts[from]![into]! += lie.oil[i]!;
  }
  const volumes = new Array<number>(basins.count).fill(0);
  parts.forEach((part, p) => {
    const main = part.indexOf(Math.max(...part));
    if (main < 0) return;
    part.forEach((value, k) => {
      if (k === main || value >= crumb) return;
      part[main]! += value;
      part[k] = 0;
    });
    const sum = part.reduce((total, value) => total + value, 0);
    if (sum === 0) return;
    part.forEach((value, k) => {
      volumes[k]! += (value / sum) * lie.volumes[p]!;
    });
  });
  return volumes;
};

const ramped = (grid: Grid, task: Task, start: Lie, passing: Passing): Outcome => {
  let lie = start;
  let outcome: Outcome = { mouth: Number.NaN, pools: [], surface: 0 };
  const { size } = grid.cubes.frame;
  const crumb = 4 * size[0] * size[2] * (grid.cubes.frame.space.max[1] - grid.cubes.frame.space.min[1]);
  let from: Acceleration = { forward: 0, left: 0 };
  let first = 0;
  for (const to of task.path) {
    for (let step = first; step <= task.steps; step++) {
      const part = step / task.steps;
      const at = {
        forward: from.forward + (to.forward - from.forward) * part,
        left: from.left + (to.left - from.left) * part,
      };
      const { basins, stock } = look(grid, task, at, passing);
      const pools = poolsOf(basins, stock, poured(grid, lie, basins, crumb));
      const owner = new Int32Array(basins.count);
      pools.forEach((pool, p) => {
        for (const k of pool.hollows) owner[k] = p;
      });
      const levels = pools.map((pool) => levelOf(stock, pool));
      const volumes = pools.map((pool) => pool.volume);
      lie = lay(grid, basins, volumes, (k) => ({ pool: owner[k]!, level: levels[owner[k]!]! }));
      if (step < task.steps) continue;
      const mine = poolAtMouth(grid, lie);
      outcome = {
        mouth: volumes[mine] ?? 0,
        pools: volumes.filter((volume) => volume > 1).sort((a, b) => b - a),
        surface: mine < 0 ? 0 : surfaceOf(stock, pools[mine]!.hollows, levels[mine]!),
      };
    }
    from = to;
    first = 1;
  }
  return outcome;
};

export interface Answer {
  readonly rest: RestOutcome;
  readonly held: Outcome;
  readonly settled: Outcome;
}

/**
 * Where the oil lies at rest, and after the manoeuvre with doors and weeps tight, and with them passing oil; null
 * where there is more oil than room, or too little to fill the hollows that keep it from the mouth.
 */
export const oilOnGrid = (grid: Grid, task: Task): Answer | null => {
  const start = rest(grid, task);
  if (start === null) return null;
  return {
    rest: start.outcome,
    held: ramped(grid, task, start.lie, HELD),
    settled: ramped(grid, task, start.lie, SETTLED),
  };
};

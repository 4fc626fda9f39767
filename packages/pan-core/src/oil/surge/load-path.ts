import type { Load, Manoeuvre } from '../../design/index.js';
import { PanError } from '../../errors/index.js';
import { AT_REST } from '../attitude.js';
import { practice } from './practice.js';

/** A car's load over time, from 0 to `seconds`. */
export interface LoadPath {
  readonly seconds: number;
  /** When the load begins to go off for good, s: what comes after is only watched. */
  readonly loadedUntil: number;
  /** Times at which the load has a corner, ascending, without 0 and the end; s. */
  readonly corners: readonly number[];
  /** The load at a time in s. */
  readonly at: (t: number) => Load;
}

/** A load that comes on within `ramp` s, straight, and then stays for `seconds`. */
export interface LoadStep {
  readonly load: Load;
  readonly ramp: number;
  readonly seconds: number;
}

/** Steps one after the other, from `from` (at rest unless said). */
export const stepsPath = (
  steps: readonly LoadStep[],
  from: Load = AT_REST,
  loadedSteps = steps.length,
): LoadPath => {
  const times = [0];
  const loads = [from];
  for (const { load, ramp, seconds } of steps) {
    const start = times[times.length - 1] as number;
    times.push(start + ramp, start + ramp + seconds);
    loads.push(load, load);
  }
  const end = times[times.length - 1] as number;
  const piece = createPiece(times);
  return {
    seconds: end,
    loadedUntil: times[2 * loadedSteps] as number,
    corners: [...new Set(times)].filter((t) => t > 0 && t < end),
    at: (t) => {
      const i = piece(t);
      const [a, b] = [loads[i] as Load, loads[i + 1] as Load];
      const [t0, t1] = [times[i] as number, times[i + 1] as number];
      if (a === b || t1 <= t0) return b;
      return mix(a, b, Math.min(1, Math.max(0, (t - t0) / (t1 - t0))));
    },
  };
};

const mix = (a: Load, b: Load, s: number): Load => ({
  forward: a.forward + (b.forward - a.forward) * s,
  left: a.left + (b.left - a.left) * s,
  grade: a.grade + (b.grade - a.grade) * s,
});

/**
 * A manoeuvre: from rest on its grade through each load of `via`, its own for its time, and off again.
 *
 * @param ramp how long each load takes to come on, s; @param after how long the run goes on, s
 */
export const manoeuvrePath = (
  manoeuvre: Manoeuvre,
  ramp = practice('rampSeconds'),
  after = practice('afterSeconds'),
): LoadPath => {
  const { grade, forward, left, seconds, via } = manoeuvre;
  const start: Load = { ...AT_REST, grade };
  const steps: LoadStep[] = [
    ...via.map((load): LoadStep => ({ load, ramp, seconds: 0 })),
    { load: { forward, left, grade }, ramp, seconds },
    { load: start, ramp, seconds: after },
  ];
  return stepsPath(steps, start, steps.length - 1);
};

/** A logger's record: ascending times in s, accelerations of the car in g, left and forward positive. */
export interface LoadLog {
  readonly time: ArrayLike<number>;
  readonly forward: ArrayLike<number>;
  readonly left: ArrayLike<number>;
}

/**
 * A smooth load through every sample of a log, without overshoot: cubic pieces with Fritsch and Butland's
 * slopes (SIAM J. Sci. Stat. Comput. 5 (1984), p. 300, from memory). Time starts at the first sample.
 *
 * @throws PanError `input-size` for fewer than two samples, `input-range` where time does not go forward or a value is no number
 */
export const logPath = (log: LoadLog, grade = 0): LoadPath => {
  const n = log.time.length;
  if (n < 2 || log.forward.length !== n || log.left.length !== n) {
    throw new PanError({
      code: 'input-size',
      path: [],
      message: `A log needs at least two samples with time, forward and left each; it has ${n}.`,
      advice: 'Give more of it.',
    });
  }
  const start = log.time[0] as number;
  const time = Float64Array.from(log.time, (t) => t - start);
  for (let i = 0; i < n; i++) {
    const fine = [log.time[i], log.forward[i], log.left[i]].every(Number.isFinite);
    if (fine && (i === 0 || (time[i] as number) > (time[i - 1] as number))) continue;
    throw new PanError({
      code: 'input-range',
      path: [],
      message: `Sample ${i + 1} of the log, at ${log.time[i]} s, does not follow the one before or is no number.`,
      advice: 'Sort the log by time and take doubles and gaps out.',
    });
  }
  const forward = smooth(time, log.forward);
  const left = smooth(time, log.left);
  const piece = createPiece(time);
  const end = time[n - 1] as number;
  return {
    seconds: end,
    loadedUntil: end,
    corners: [],
    at: (t) => {
      const i = piece(t);
      return { forward: forward(i, t), left: left(i, t), grade };
    },
  };
};

/** Which piece of ascending times holds t; the last answer is tried first. */
const createPiece = (times: ArrayLike<number>): ((t: number) => number) => {
  const last = times.length - 2;
  let i = 0;
  return (t) => {
    if (t < (times[i] as number) || t > (times[Math.min(i + 8, last + 1)] as number)) {
      let [lo, hi] = [0, last];
      while (lo < hi) {
        const middle = (lo + hi + 1) >> 1;
        if ((times[middle] as number) <= t) lo = middle;
        else hi = middle - 1;
      }
      i = lo;
    }
    while (i < last && (times[i + 1] as number) <= t) i++;
    return i;
  };
};

const smooth = (time: Float64Array, value: ArrayLike<number>): ((i: number, t: number) => number) => {
  const n = time.length;
  const rise = (i: number): number =>
    ((value[i + 1] as number) - (value[i] as number)) / ((time[i + 1] as number) - (time[i] as number));
  const slope = Float64Array.from({ length: n }, (_, i) => {
    if (i === 0 || i === n - 1) return 0;
    const [a, b] = [rise(i - 1), rise(i)];
    return a * b > 0 ? (2 * a * b) / (a + b) : 0;
  });
  return (i, t) => {
    const h = (time[i + 1] as number) - (time[i] as number);
    const s = Math.min(1, Math.max(0, (t - (time[i] as number)) / h));
    const [a, b] = [value[i] as number, value[i + 1] as number];
    const [p, q] = [h * (slope[i] as number), h * (slope[i + 1] as number)];
    return a + s * (p + s * (3 * (b - a) - 2 * p - q + s * (2 * (a - b) + p + q)));
  };
};

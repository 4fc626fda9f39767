import type { SurgeRun } from 'pan-core/oil/index.js';

/** The first moment at which a column of values passes `value` on its way down, straight between rows; s. */
export const timeBelow = (time: ArrayLike<number>, column: ArrayLike<number>, value: number): number => {
  for (let i = 1; i < time.length; i++) {
    const [a, b] = [column[i - 1] as number, column[i] as number];
    if (a > value && b <= value) {
      const [t0, t1] = [time[i - 1] as number, time[i] as number];
      return t0 + ((a - value) / (a - b)) * (t1 - t0);
    }
  }
  return Number.NaN;
};

/** Oil in one of a run's rooms over time; a name that is not there is a mistake of the test. */
export const roomOil = ({ series }: SurgeRun, name: RegExp): Float64Array => {
  const found = series.rooms.filter((room) => name.test(room.name));
  if (found.length !== 1) throw new Error(`${name} names ${series.rooms.map((r) => r.name).join('; ')}`);
  return (found[0] as (typeof found)[number]).volume;
};

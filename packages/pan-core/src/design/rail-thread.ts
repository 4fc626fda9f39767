import table from './thread-holes.json' with { type: 'json' };

/** A thread that a drawn diameter was said to be. */
export interface DrawnThread {
  readonly drawn: number;
  /** The thread's own diameter. */
  readonly size: number;
}

/** How near a drawn diameter must come to a tabled or stated one. */
const NEAR = 0.1;

const near = (a: number, b: number): boolean => Math.abs(a - b) <= NEAR + 1e-9;

/**
 * Threads that a hole of this diameter can be for: drawn as tapped, at the thread's own diameter, or with
 * clearance. Several where diameters of different threads fall together, such as 10 mm.
 */
export const threadsFor = (diameter: number): readonly number[] =>
  table.rows
    .filter(({ thread, tap, fine, medium, coarse }) =>
      [tap, thread, fine, medium, coarse].some((size) => near(diameter, size)),
    )
    .map(({ thread }) => thread);

/** Whether a hole of this diameter can be for bolts of that thread: from its tap drill to its widest clearance. */
export const canBeFor = (thread: number, diameter: number): boolean => {
  const row = table.rows.find((one) => one.thread === thread);
  const [least, most] = row === undefined ? [0.8 * thread, 1.25 * thread] : [row.tap, row.coarse];
  return diameter >= least - NEAR && diameter <= most + NEAR;
};

/** The thread stated for a drawn diameter; null when none is. */
export const statedThread = (stated: readonly DrawnThread[], diameter: number): number | null =>
  stated.find(({ drawn }) => near(drawn, diameter))?.size ?? null;

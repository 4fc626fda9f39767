import table from './fasteners.json' with { type: 'json' };

/** A bolt's head and washer, mm. */
export interface Fastener {
  readonly thread: number;
  readonly headHeight: number;
  readonly acrossCorners: number;
  readonly washer: number;
  readonly washerThickness: number;
}

/**
 * Head and washer for a thread: the table's row, the next larger one between rows, and past its end the last
 * row in proportion. ISO 4014/4017 and ISO 7089, from memory.
 */
export const fastenerFor = (thread: number): Fastener => {
  const row = table.rows.find((r) => r.thread >= thread - 1e-9);
  if (row !== undefined) return row;
  const last = table.rows[table.rows.length - 1]!;
  const k = thread / last.thread;
  return {
    thread,
    headHeight: last.headHeight * k,
    acrossCorners: last.acrossCorners * k,
    washer: last.washer * k,
    washerThickness: last.washerThickness * k,
  };
};

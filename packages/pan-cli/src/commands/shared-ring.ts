import { type Limit, limitToward, type OilSystem } from 'pan-core';
import { type Found, type LimitsShare, takeDirections } from './limits-share.js';
import { openWorkers } from './worker-pool.js';

/** Work worth a second thread, ms: one costs half a bare start, and begins cold. */
const WORTH_MS = 300;
/** Directions done first, by which the rest is judged. */
const JUDGED = 8;

export interface SharedRing {
  readonly ring: readonly Limit[];
  readonly threads: 1 | 2;
}

/**
 * The ring of limits, with a second thread where what is left would take longer than `worth`, ms. Each direction
 * is worked out alone, so the answer is the same whoever does it; one that the thread fails to give is done here.
 *
 * @throws PanError as `limitToward` does
 */
export const sharedRing = async (
  system: OilSystem,
  volume: number,
  count: number,
  program: URL = new URL('./part-limits-worker.js', import.meta.url),
  worth = WORTH_MS,
): Promise<SharedRing> => {
  const next = new Int32Array(new SharedArrayBuffer(Int32Array.BYTES_PER_ELEMENT));
  const share: LimitsShare = { design: system.model.design, volume, count, next };
  const start = performance.now();
  const first = takeDirections(system, share, JUDGED);
  const left = ((performance.now() - start) / first.length) * (count - first.length);
  const other = left > worth ? otherThread(program, share) : null;
  const found = new Map<number, Limit>([
    ...first,
    ...takeDirections(system, share),
    ...((await other) ?? []),
  ]);
  const ring = Array.from(
    { length: count },
    (_, i) => found.get(i) ?? limitToward(system, volume, (360 * i) / count),
  );
  return { ring, threads: other === null ? 1 : 2 };
};

/** What a second thread finds; nothing where it cannot run. */
const otherThread = async (program: URL, share: LimitsShare): Promise<readonly Found[]> => {
  const pool = openWorkers<LimitsShare, readonly Found[]>(program, null, 1);
  try {
    return (await pool.ask([share])).flatMap((found) => found ?? []);
  } catch {
    return [];
  } finally {
    await pool.close();
  }
};

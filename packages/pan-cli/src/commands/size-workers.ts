import { availableParallelism } from 'node:os';
import type { Batch, Beside, Verdict } from 'pan-core';
import { openWorkers, type WorkerPool } from './worker-pool.js';

/** What a thread is told once: the design file's data and what lies beside it. */
export interface SizeStart {
  readonly file: unknown;
  readonly beside: Beside;
}

/** One question of a batch, with the request that it belongs to. */
export interface SizeQuestion extends Pick<Batch, 'request'> {
  readonly question: Batch['questions'][number];
}

export type SizeWorkers = WorkerPool<SizeQuestion, Verdict>;

const MOST = 4;

/** As many threads as the machine has cores, within reason; the answers do not depend on how many there are. */
export const openSizeWorkers = (
  start: SizeStart,
  stop?: AbortSignal,
  count = Math.min(MOST, availableParallelism()),
  program: URL = new URL('./part-size-worker.js', import.meta.url),
): SizeWorkers => openWorkers(program, start, count, stop);

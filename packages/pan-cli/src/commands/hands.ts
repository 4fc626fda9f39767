import { availableParallelism } from 'node:os';
import { Worker } from 'node:worker_threads';
import type { Batch, Beside, Verdict } from 'pan-core';

/** What a worker is told once, then asked over and over. */
export interface HandStart {
  readonly file: unknown;
  readonly beside: Beside;
}

/** Threads that answer batches; the answers do not depend on how many there are. */
export interface Hands {
  readonly answer: (batch: Batch) => Promise<readonly Verdict[]>;
  readonly stop: () => Promise<void>;
}

const MOST_HANDS = 4;

/** As many threads as the machine has cores, within reason. */
export const openHands = (start: HandStart, count = Math.min(MOST_HANDS, availableParallelism())): Hands => {
  const workers = Array.from(
    { length: count },
    () => new Worker(new URL('./size-worker.js', import.meta.url), { workerData: start }),
  );
  return {
    answer: async ({ request, questions }) => {
      const verdicts = new Array<Verdict>(questions.length);
      let next = 0;
      const serve = async (worker: Worker): Promise<void> => {
        while (next < questions.length) {
          const at = next++;
          verdicts[at] = await once(worker, {
            request,
            questions: [questions[at] as Batch['questions'][number]],
          });
        }
      };
      await Promise.all(workers.map(serve));
      return verdicts;
    },
    stop: async () => {
      await Promise.all(workers.map((worker) => worker.terminate()));
    },
  };
};

const once = (worker: Worker, batch: Batch): Promise<Verdict> =>
  new Promise((settle, refuse) => {
    const done = (): void => {
      worker.off('message', heard);
      worker.off('error', failed);
    };
    const heard = ([verdict]: readonly Verdict[]): void => {
      done();
      settle(verdict as Verdict);
    };
    const failed = (error: Error): void => {
      done();
      refuse(error);
    };
    worker.on('message', heard);
    worker.on('error', failed);
    worker.postMessage(batch);
  });

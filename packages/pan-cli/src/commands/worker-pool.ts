import { Worker } from 'node:worker_threads';

/** Threads that run one program, each answering one question with one message. */
export interface WorkerPool<Q, A> {
  /** Answers in the order of the questions; null for those a stop came before. Rejects when a thread fails. */
  readonly ask: (questions: readonly Q[]) => Promise<readonly (A | null)[]>;
  readonly close: () => Promise<void>;
}

/**
 * @param start what each thread is told once, as its `workerData`
 * @param stop ends every wait at once when it is aborted
 */
export const openWorkers = <Q, A>(
  program: URL,
  start: unknown,
  count: number,
  stop?: AbortSignal,
): WorkerPool<Q, A> => {
  const threads = Array.from({ length: count }, () => openThread<Q, A>(program, start));
  const stopped = new Promise<void>((settle) => {
    stop?.addEventListener('abort', () => settle(), { once: true });
  });
  return {
    ask: async (questions) => {
      const answers = new Array<A | null>(questions.length).fill(null);
      if (stop?.aborted === true) return answers;
      let next = 0;
      const serve = async (thread: Thread<Q, A>): Promise<void> => {
        while (next < questions.length) {
          const at = next++;
          answers[at] = await thread.ask(questions[at] as Q);
        }
      };
      await Promise.race([Promise.all(threads.map(serve)), stopped]);
      return [...answers];
    },
    close: async () => {
      await Promise.all(threads.map((thread) => thread.close()));
    },
  };
};

interface Thread<Q, A> {
  readonly ask: (question: Q) => Promise<A>;
  readonly close: () => Promise<number>;
}

const openThread = <Q, A>(program: URL, start: unknown): Thread<Q, A> => {
  const worker = new Worker(program, { workerData: start });
  let waiting: { readonly settle: (answer: A) => void; readonly refuse: (error: unknown) => void } | null =
    null;
  let failure: unknown = null;
  const fail = (error: unknown): void => {
    failure ??= error;
    waiting?.refuse(failure);
  };
  worker.on('message', (answer: A) => waiting?.settle(answer));
  worker.on('error', fail);
  worker.on('exit', () => fail(new Error('A thread ended before it had answered.')));
  return {
    ask: (question) =>
      new Promise((settle, refuse) => {
        if (failure !== null) return refuse(failure);
        waiting = { settle, refuse };
        worker.postMessage(question);
      }),
    close: () => worker.terminate(),
  };
};

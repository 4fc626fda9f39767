import { parentPort, workerData } from 'node:worker_threads';
import { type Batch, posed, verdictAt } from 'pan-core';
import type { HandStart } from './hands.js';

const { file, beside } = workerData as HandStart;
const pose = posed(file, beside);

parentPort?.on('message', ({ request, questions }: Batch) => {
  const problem = pose(request);
  parentPort?.postMessage(questions.map((question) => verdictAt(problem, question)));
});

import { parentPort, workerData } from 'node:worker_threads';
import { posed, verdictAt } from 'pan-core';
import type { SizeQuestion, SizeStart } from './size-workers.js';

const { file, beside } = workerData as SizeStart;
const pose = posed(file, beside);

parentPort?.on('message', ({ request, question }: SizeQuestion) => {
  parentPort?.postMessage(verdictAt(pose(request), question));
});

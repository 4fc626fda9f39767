import { parentPort } from 'node:worker_threads';
import { buildPan, createOilSystem } from 'pan-core';
import { type LimitsShare, takeDirections } from './limits-share.js';

parentPort?.on('message', (share: LimitsShare) => {
  parentPort?.postMessage(takeDirections(createOilSystem(buildPan(share.design)), share));
});

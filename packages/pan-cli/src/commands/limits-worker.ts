import { parentPort, workerData } from 'node:worker_threads';
import { buildPan, createOilSystem } from 'pan-core';
import { type LimitsShare, takeDirections } from './limits-share.js';

const share = workerData as LimitsShare;
parentPort?.postMessage(takeDirections(createOilSystem(buildPan(share.design)), share));

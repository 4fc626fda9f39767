import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import {
  createBody,
  createMeasure,
  createOriented,
  type Measure,
  orient,
  solveAt,
} from 'pan-core/oil/index.js';
import { expect, it } from 'vitest';
import { upFrom } from '../fixed-point.js';
import { randomPan } from '../random-design.js';

/** One number on the heap is 16 bytes a solve; reading the heap's size costs a few hundred once. */
const MOST_BYTES = 2;
const SOLVES = 10_000;

setFlagsFromString('--expose-gc');
const collect = runInNewContext('gc') as () => void;
const used = (): number => process.memoryUsage().heapUsed;

const body = createBody(randomPan(7));
const cells = Array.from(body.capacity, (_, c) => c);
const volume = 0.4 * body.capacity.reduce((a, b) => a + b, 0);
const ups = Array.from({ length: 100 }, (_, i) => upFrom(0.01 * i, 0.3 - 0.005 * i));
const oriented = createOriented(body);

/** Bytes a solve that a run of solves leaves behind, the least of a few runs: other threads of the engine allocate too. */
const bytesEach = (also: (out: Measure) => void): number => {
  const out = createMeasure();
  const run = (): void => {
    out.level = Number.NaN;
    for (let i = 0; i < SOLVES; i++) {
      out.volume = volume;
      solveAt(orient(oriented, ups[i % ups.length] as (typeof ups)[number]), cells, out);
      also(out);
    }
  };
  for (let i = 0; i < 3; i++) run();
  const runs = Array.from({ length: 5 }, () => {
    collect();
    const idle = -used() + used();
    const before = used();
    run();
    return Math.abs(used() - before - idle) / SOLVES;
  });
  return Math.min(...runs);
};

it('a level solve leaves nothing on the heap', () => {
  const bytes = bytesEach(() => {});
  console.log(`${bytes.toFixed(2)} bytes a solve`);
  expect(bytes).toBeLessThan(MOST_BYTES);
});

it('one number kept apart each time would be seen', () => {
  const kept: unknown[] = [];
  expect(bytesEach(({ level }) => kept.push({ level }))).toBeGreaterThan(MOST_BYTES);
});

import { fileURLToPath, pathToFileURL } from 'node:url';
import { sharedRing } from 'pan-cli/commands/shared-ring.js';
import { openWorkers } from 'pan-cli/commands/worker-pool.js';
import { createOilSystem, limitRing } from 'pan-core/oil/index.js';
import { buildPan } from 'pan-core/pan/index.js';
import { expect, it } from 'vitest';
import { sampleDesign } from '../sample-design.js';

const program = pathToFileURL(
  fileURLToPath(new URL('../../packages/pan-cli/dist/part-limits-worker.js', import.meta.url)),
);
const COUNT = 24;
const VOLUME = 5.3e6;
const system = createOilSystem(buildPan(sampleDesign()));
const alone = limitRing(system, VOLUME, COUNT);

it('one thread and two give the same limits, to the last bit', async () => {
  const one = await sharedRing(system, VOLUME, COUNT, program, Number.POSITIVE_INFINITY);
  const two = await sharedRing(system, VOLUME, COUNT, program, 0);
  expect([one.threads, two.threads]).toEqual([1, 2]);
  expect(one.ring).toStrictEqual(alone);
  expect(two.ring).toStrictEqual(alone);
});

it('a thread by itself gives every direction, to the last bit', async () => {
  const next = new Int32Array(new SharedArrayBuffer(Int32Array.BYTES_PER_ELEMENT));
  const share = { design: system.model.design, volume: VOLUME, count: COUNT, next };
  const pool = openWorkers(program, null, 1);
  const found = await pool.ask([share]).finally(pool.close);
  expect(found[0]).toStrictEqual(alone.map((limit, i) => [i, limit]));
});

it('a thread that cannot run leaves nothing out', async () => {
  const none = new URL('no-such-program.js', program);
  const { ring } = await sharedRing(system, VOLUME, COUNT, none, 0);
  expect(ring).toStrictEqual(alone);
});

// The ring of limits on one thread and on two, turn about, on sweeps that take longer than a second thread costs.
import { readFileSync } from 'node:fs';
import { availableParallelism, loadavg } from 'node:os';
import { parse } from 'yaml';
import { loadCore } from './shared/core.mjs';

const LEAST = 1.7;
const FROM_MS = 300;
const ROUNDS = 3;

const core = await loadCore();
const here = (path) => new URL(path, import.meta.url);
const program = here('../../packages/pan-cli/dist/part-limits-worker.js');
const demo = parse(readFileSync(here('../../packages/pan-cli/examples/demo.yaml'), 'utf8'));
const { design } = core.readDesign(demo);
const system = core.createOilSystem(core.buildPan(design));
const volume = core.inventoryOf(design.oil).runningInPan;
const median = (values) => [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)];

const run = async (count, worth) => {
  const start = performance.now();
  const { ring } = await core.sharedRing(system, volume, count, program, worth);
  return { ms: performance.now() - start, ring: JSON.stringify(ring) };
};

await run(72, Number.POSITIVE_INFINITY);
console.log(
  `  ${availableParallelism()} cores, load ${loadavg()[0].toFixed(1)} before: with other work on the machine two threads cannot show`,
);
for (const count of [360, 720]) {
  const times = { one: [], two: [] };
  let same = true;
  for (let round = 0; round < ROUNDS; round++) {
    const one = await run(count, Number.POSITIVE_INFINITY);
    const two = await run(count, 0);
    times.one.push(one.ms);
    times.two.push(two.ms);
    same &&= one.ring === two.ring;
  }
  const [one, two] = [median(times.one), median(times.two)];
  const met = (one < FROM_MS || one / two >= LEAST) && same;
  if (!met) process.exitCode = 1;
  console.log(
    `  ${count} directions: ${one.toFixed(0)} ms on one thread, ${two.toFixed(0)} on two, ${(one / two).toFixed(2)} ×, ${met ? '' : 'NOT '}at least ${LEAST}; ${same ? 'the same' : 'NOT the same'} to the last bit`,
  );
}

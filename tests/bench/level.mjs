// A single level in a warm sweep, beside two general geometry kernels on the same pans in the same run. The
// accuracy of every level that is timed is printed with it, by the tests' arithmetic that does not round.
import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { loadCore } from './shared/core.mjs';
import { PANS, panOf } from './shared/pans.mjs';
import { jscadBelow, jscadOf, manifoldLevel, manifoldOf, VERSIONS } from './shared/peers.mjs';

const LEAST = { manifold: 300, jscad: 1000 };
const MOST_MISS = 1e-12;
/** Surface slopes of the sweep: a turn from level to 50 degrees and back, and levels hard to tell from level. */
const SWEEP = 200;
const SMALL = [0, 1e-8, 1e-7, 1e-6, 1e-5, 1e-4, 1e-3];
const SOLVES = { 60: 400_000, 600: 60_000, 6000: 4000 };
const PEER_LEVELS = { 60: 60, 600: 20, 6000: 8 };
const FILL = 0.35;
const HEAP_SOLVES = 100_000;

setFlagsFromString('--expose-gc');
const collect = runInNewContext('gc');

const core = await loadCore();
const { createBody, createMeasure, createOriented, orient, solveAt, solveLevel, upFrom } = core;

const sweep = Array.from({ length: SWEEP }, (_, i) => {
  const t = (2 * Math.PI * i) / SWEEP;
  return upFrom(0.6 * (1 - Math.cos(t)), 0.4 * Math.sin(t));
});
const small = SMALL.flatMap((s) => (s === 0 ? [upFrom(0, 0)] : [upFrom(s, 0), upFrom(0, s), upFrom(s, -s)]));

const median = (values) => [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)];

/** A run through the sweep, each level from the last. */
const runner = (oriented, cells, volume) => {
  const out = createMeasure();
  return (count) => {
    out.level = Number.NaN;
    for (let i = 0; i < count; i++) {
      orient(oriented, sweep[i % SWEEP]);
      out.volume = volume;
      solveAt(oriented, cells, out);
    }
  };
};

/** Bytes of heap that solves take, each, the least of some batches; a number kept apart for every solve would be 16. */
const bytesEach = (oriented, cells, volume) => {
  const run = runner(oriented, cells, volume);
  run(HEAP_SOLVES);
  const batch = HEAP_SOLVES / 10;
  const batches = Array.from({ length: 10 }, () => {
    collect();
    const first = process.memoryUsage().heapUsed;
    const before = process.memoryUsage().heapUsed;
    run(batch);
    return Math.abs(process.memoryUsage().heapUsed - before - (before - first)) / batch;
  });
  return Math.min(...batches);
};

/** µs a level, the median of five runs through the sweep. */
const ours = (oriented, cells, volume, solves) => {
  const run = runner(oriented, cells, volume);
  run(solves);
  return median(
    Array.from({ length: 5 }, () => {
      const start = performance.now();
      run(solves);
      return ((performance.now() - start) * 1000) / solves;
    }),
  );
};

const worstMiss = (model, body, cells, ups, volume, whole) => {
  const oriented = createOriented(body);
  const out = createMeasure();
  let [h, worst] = [Number.NaN, 0];
  for (const up of ups) {
    orient(oriented, up);
    h = solveLevel(oriented, cells, volume, out, h);
    const truth = core.exactVolume(model, cells, up, body.origin, h);
    worst = Math.max(worst, Math.abs(core.toNumber(truth - core.exact(volume))) / whole);
  }
  return worst;
};

const ask = (met, text) => {
  if (!met) process.exitCode = 1;
  return `${met ? '' : 'NOT '}${text}`;
};

for (const pan of PANS) {
  const model = panOf(core, pan);
  const body = createBody(model);
  const cells = model.cells.map((_, c) => c);
  const whole = body.capacity.reduce((a, b) => a + b, 0);
  const volume = FILL * whole;
  const solid = manifoldOf(model, body.origin);
  const us = ours(createOriented(body), cells, volume, SOLVES[pan.facets]);

  const levelAt = (up) => solveLevel(orient(createOriented(body), up), cells, volume, createMeasure());
  const count = PEER_LEVELS[pan.facets];
  const places = Array.from({ length: count }, (_, i) => Math.floor((i * SWEEP) / count));
  const ups = places.map((i) => sweep[i]);
  let [steps, off] = [0, 0];
  const peer = [];
  for (const [k, up] of ups.entries()) {
    // As warm as ours: from the level one step of the sweep before.
    const before = levelAt(sweep[(places[k] + SWEEP - 1) % SWEEP]);
    const start = performance.now();
    const found = manifoldLevel(solid, up, volume, whole, before);
    peer.push((performance.now() - start) * 1000);
    steps += found.steps;
    off = Math.max(off, Math.abs(found.h - levelAt(up)));
  }
  const mesh = jscadOf(solid);
  const boolean = [];
  let apart = 0;
  for (const up of ups.slice(0, Math.max(2, count / 4))) {
    const near = levelAt(up);
    const start = performance.now();
    const below = jscadBelow(mesh, up, near);
    boolean.push((performance.now() - start) * 1000);
    apart = Math.max(apart, Math.abs(below - volume) / whole);
  }
  const times = { manifold: median(peer) / us, jscad: median(boolean) / us };
  const hard = pan.facets > 1000 ? small.filter((_, i) => i % 3 === 0) : small;
  const slopes = pan.facets > 1000 ? ups.slice(0, 4) : ups;
  const miss = worstMiss(model, body, cells, [...hard, ...slopes], volume, whole);
  console.log(
    `  ${body.triangles.length / 3} facets in ${cells.length} cells (${solid.numTri()} as one solid): ${us.toFixed(2)} µs a level`,
  );
  console.log(
    `    ${VERSIONS.manifold}: ${(median(peer) / 1000).toFixed(2)} ms in ${(steps / count).toFixed(1)} steps to 1e-6 of the whole, ${times.manifold.toFixed(0)} ×, ` +
      `${ask(times.manifold >= LEAST.manifold, `at least ${LEAST.manifold}`)}; levels agree to ${off.toExponential(0)} mm`,
  );
  console.log(
    `    ${VERSIONS.jscad}: ${(median(boolean) / 1000).toFixed(1)} ms for one boolean and measure, ${times.jscad.toFixed(0)} ×, ` +
      `${ask(times.jscad >= LEAST.jscad, `at least ${LEAST.jscad}`)}; volumes agree to ${apart.toExponential(0)} of the whole`,
  );
  console.log(
    `    |V(h) − V| at most ${miss.toExponential(1)} of the whole at slopes of 0, 1e-8 … 1e-3 and in the sweep, ${ask(miss <= MOST_MISS, `within ${MOST_MISS}`)}`,
  );
  if (pan.facets < 1000) {
    const bytes = bytesEach(createOriented(body), cells, volume);
    console.log(
      `    heap taken by batches of ${HEAP_SOLVES / 10} solves: ${bytes.toFixed(2)} bytes each, ${ask(bytes < 1, 'nothing')}`,
    );
  }
  solid.delete();
}

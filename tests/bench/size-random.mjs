// What `pan size` finds in 60 s with 8 and more values free, beside the best of random designs that pass the same
// checks, on the three examples. Random designs are drawn evenly from the same ranges until FEASIBLE of them pass
// (10,000), or SECONDS are over for an example (60 as it comes; 10,000 take hours where one in thousands passes).
// How many were drawn, and how many of them passed, is printed.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { loadavg, tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parse } from 'yaml';
import { loadCore } from './shared/core.mjs';

const FEASIBLE = Number(process.env.FEASIBLE ?? 10_000);
const SECONDS = Number(process.env.SECONDS ?? 60);
const MOST_SECONDS = 60;
const AT_ONCE = 64;
const GOAL = 'least depth';

const core = await loadCore();
const here = (path) => fileURLToPath(new URL(path, import.meta.url));
const pan = here('../../packages/pan-cli/dist/pan.js');
const worker = new URL('../../packages/pan-cli/dist/part-size-worker.js', import.meta.url);

/** The answer of the program, and whether the file it wrote passes by itself. */
const sized = (file) => {
  const folder = mkdtempSync(join(tmpdir(), 'pan-size-'));
  try {
    const out = join(folder, 'sized.yaml');
    const start = performance.now();
    const args = [pan, 'size', file, '--for', GOAL, '--time', `${MOST_SECONDS} s`, '--json', '--out', out];
    const run = spawnSync(process.execPath, args, { encoding: 'utf8', maxBuffer: 1e8 });
    const seconds = (performance.now() - start) / 1000;
    const { figure, passes, tried, stopped } = JSON.parse(run.stdout);
    const check = spawnSync(process.execPath, [pan, 'check', out], { encoding: 'utf8', maxBuffer: 1e8 });
    return { figure, passes, tried, stopped, seconds, checked: check.status === 0 };
  } finally {
    rmSync(folder, { recursive: true });
  }
};

/** Random designs on two threads; a design is given up at the first check that fails. */
const drawn = async (file) => {
  const raw = parse(readFileSync(file, 'utf8'));
  const request = core.requestFor(GOAL);
  const problem = core.posed(raw)(request);
  const random = core.seededStream(1);
  const workers = core.openSizeWorkers({ file: raw, beside: core.NOTHING_BESIDE }, undefined, 2, worker);
  const start = performance.now();
  const told = { free: problem.freedoms.length, draws: 0, feasible: 0, best: null, seconds: 0 };
  while (told.feasible < FEASIBLE && told.seconds < SECONDS) {
    const questions = Array.from({ length: AT_ONCE }, () => ({
      request,
      question: { at: problem.freedoms.map(() => random()), enough: 0 },
    }));
    const verdicts = await workers.ask(questions);
    told.draws += questions.length;
    for (const { miss, cost } of verdicts) {
      if (miss > 0) continue;
      told.feasible += 1;
      const figure = cost * problem.goal.scale;
      if (told.best === null || figure < told.best) told.best = figure;
    }
    told.seconds = (performance.now() - start) / 1000;
  }
  await workers.close();
  return told;
};

for (const name of ['demo', 'two-wings', 'inches']) {
  const file = here(`../../packages/pan-cli/examples/${name}.yaml`);
  const load = loadavg()[0].toFixed(1);
  const answer = sized(file);
  const { free, draws, feasible, best, seconds } = await drawn(file);
  const met = answer.passes && answer.checked && (best === null || answer.figure < best);
  if (!met) process.exitCode = 1;
  console.log(
    `  ${name}, ${free} values free: ${answer.figure?.toFixed(1)} mm deep in ${answer.seconds.toFixed(0)} s at a load of ${load}, ${answer.tried} designs tried${answer.stopped ? ', stopped by the clock' : ''}; its file ${answer.checked ? 'passes' : 'does NOT pass'} \`pan check\``,
  );
  console.log(
    `    ${draws} random designs in ${seconds.toFixed(0)} s, ${feasible} of them feasible${feasible < FEASIBLE ? `, not the ${FEASIBLE} wanted` : ''}: the best is ${best === null ? 'none' : `${best.toFixed(1)} mm`}, the answer ${met ? 'better' : 'NOT better'}`,
  );
}

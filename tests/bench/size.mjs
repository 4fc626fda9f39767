// Sizing with eight and more free values against as many random designs as are asked for: the best of those that pass
// the same checks, drawn evenly over the same ranges, beside what `pan size` finds, with both times. RANDOM says how
// many are drawn (10,000), PASSING stops a draw early once so many passed. Most draws do not pass, so that 10,000
// passing ones may take hours: how many did is printed, and counts. Exits 1 where a random design is better or sizing
// takes longer than a minute.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { availableParallelism, loadavg, tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parse } from 'yaml';
import { loadCore } from './shared/core.mjs';

const MOST_S = 60;
const DRAWS = Number(process.env.RANDOM ?? 10_000);
const PASSING = Number(process.env.PASSING ?? 10_000);
const SEED = Number(process.env.PAN_SEED ?? 1);

const problems = [
  {
    name: 'demo',
    free: [
      'fill',
      'sump depth',
      'step',
      'width',
      'right wing reach',
      'right wing top',
      'lid depth',
      'lid rear',
      'mouth x',
      'door wall place',
    ],
  },
  {
    name: 'two-wings',
    free: [
      'fill',
      'sump depth',
      'step',
      'width',
      'right wing reach',
      'left wing reach',
      'lid depth',
      'lid rear',
      'mouth x',
    ],
  },
  {
    name: 'inches',
    free: [
      'fill',
      'sump depth',
      'shallow depth',
      'step',
      'width',
      'lid depth',
      'lid rear',
      'mouth x',
      'door wall place',
    ],
  },
];

const core = await loadCore();
const here = (path) => fileURLToPath(new URL(path, import.meta.url));
const pan = here('../../packages/pan-cli/dist/pan.js');

/** The tests' own stream of numbers: mulberry32. */
const stream = (seed) => {
  let a = seed >>> 0;
  return () => {
    a = (a + 0x6d2b79f5) >>> 0;
    let t = Math.imul(a ^ (a >>> 15), a | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
};

/** The least cost among random places that pass, in the goal's own unit. */
const randomBest = (raw, free) => {
  const request = core.requestFor(
    'least depth',
    free.map((what) => ({ what })),
    { seed: 1 },
  );
  const problem = core.posed(raw)(request);
  const next = stream(SEED);
  const start = performance.now();
  let [best, drawn, passing] = [Number.POSITIVE_INFINITY, 0, 0];
  while (drawn < DRAWS && passing < PASSING) {
    drawn++;
    const at = problem.freedoms.map(() => next());
    // A miss of any size ends the asking: only what passes is looked at whole.
    const { miss, cost } = core.verdictAt(problem, { at, enough: 0 });
    if (miss > 0) continue;
    passing++;
    best = Math.min(best, cost * 10);
  }
  return { best, drawn, passing, seconds: (performance.now() - start) / 1000 };
};

const sized = (file, free, folder) => {
  const start = performance.now();
  const { stdout, stderr } = spawnSync(
    process.execPath,
    [
      pan,
      'size',
      file,
      '--free',
      free.join(', '),
      '--for',
      'least depth',
      '--json',
      '--out',
      join(folder, 'sized.yaml'),
    ],
    { encoding: 'utf8', maxBuffer: 1e8 },
  );
  const seconds = (performance.now() - start) / 1000;
  const checked = spawnSync(process.execPath, [pan, 'check', join(folder, 'sized.yaml'), '--json'], {
    encoding: 'utf8',
    maxBuffer: 1e8,
  });
  try {
    const report = JSON.parse(stdout);
    const fails = JSON.parse(checked.stdout).checks.filter(({ status }) => status === 'fail').length;
    return { figure: report.figure, tried: report.tried, passes: report.passes, fails, seconds };
  } catch {
    throw new Error(`pan size ended badly: ${stderr}`);
  }
};

console.log(`${availableParallelism()} cores, load ${loadavg()[0].toFixed(1)} before`);
for (const { name, free } of problems) {
  const file = here(`../../packages/pan-cli/examples/${name}.yaml`);
  const folder = mkdtempSync(join(tmpdir(), 'pan-bench-size-'));
  try {
    const found = sized(file, free, folder);
    const random = randomBest(parse(readFileSync(file, 'utf8')), free);
    const better = found.passes && found.figure <= random.best;
    const quick = found.seconds < MOST_S;
    console.log(
      `${name}, ${free.length} free values: sized to ${found.figure.toFixed(1)} mm in ${found.seconds.toFixed(0)} s ` +
        `${quick ? '' : 'NOT '}under ${MOST_S} s, ${found.tried} designs asked about, ${found.fails} checks fail on the written file; ` +
        `best of ${random.passing} that pass of ${random.drawn} random ones ${random.best.toFixed(1)} mm in ${random.seconds.toFixed(0)} s  ${better ? 'better' : 'NOT better'}`,
    );
    if (!better || !quick || found.fails > 0) process.exitCode = 1;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

// A full settled answer with pools, ramped from rest to 1.2 g on the demo, in single-plane solves of the same
// pan; and the ring of 72 directions in answers of that size. Every direction is timed, not one that suits.
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { parse } from 'yaml';
import { loadCore } from './shared/core.mjs';

const MOST_SOLVES = 300;
const DIRECTIONS = 72;
const LOAD = 1.2;
const ROUNDS = 9;

const core = await loadCore();
const demo = fileURLToPath(new URL('../../packages/pan-cli/examples/demo.yaml', import.meta.url));
const { design } = core.readDesign(parse(readFileSync(demo, 'utf8')));
const system = core.createOilSystem(core.buildPan(design));
const volume = core.inventoryOf(design.oil).runningInPan;
const loads = Array.from({ length: DIRECTIONS }, (_, i) => core.loadToward((360 * i) / DIRECTIONS, LOAD));
const median = (values) => [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)];
const timed = (work) => {
  const start = performance.now();
  work();
  return (performance.now() - start) * 1000;
};

// One plane through the whole pan, no guess: what each step of a ramp would cost without pools.
const cells = system.model.cells.map((_, c) => c);
const oriented = core.createOriented(system.body);
const measure = core.createMeasure();
const ups = loads.map((load) => core.attitudeOf(design, load).up);
const solves = () => {
  for (const up of ups) core.solveLevel(core.orient(oriented, up), cells, volume, measure);
};

for (let i = 0; i < 300; i++) solves();
for (let i = 0; i < 3; i++) for (const load of loads) core.rampAnswer(system, volume, load, 'settled');
core.limitRing(system, volume, DIRECTIONS);

const rounds = Array.from({ length: ROUNDS }, () => ({
  solve:
    timed(() => {
      for (let i = 0; i < 20; i++) solves();
    }) /
    (20 * DIRECTIONS),
  answers: loads.map((load) => timed(() => core.rampAnswer(system, volume, load, 'settled'))),
  ring: timed(() => core.limitRing(system, volume, DIRECTIONS)),
}));
const solve = median(rounds.map((round) => round.solve));
const answers = loads.map((_, i) => median(rounds.map((round) => round.answers[i])));
const ring = median(rounds.map((round) => round.ring));

const say = (name, value, most) => {
  const met = value <= most;
  if (!met) process.exitCode = 1;
  console.log(`  ${name}: ${value.toFixed(0)}, ${met ? '' : 'NOT '}within ${most}`);
};
console.log(
  `  a single-plane solve of the demo takes ${solve.toFixed(2)} µs, a settled answer at ${LOAD} g ${(median(answers) / 1000).toFixed(2)} ms (median of ${DIRECTIONS} directions)`,
);
const braking = answers[0];
const left = answers[DIRECTIONS / 4];
say('solves in a settled answer, braking', braking / solve, MOST_SOLVES);
say('solves in a settled answer, left turn', left / solve, MOST_SOLVES);
say('solves in the median direction', median(answers) / solve, MOST_SOLVES);
const worst = Math.max(...answers);
console.log(
  `  solves in the worst direction, ${(360 * answers.indexOf(worst)) / DIRECTIONS} deg: ${(worst / solve).toFixed(0)}; ${answers.filter((us) => us > MOST_SOLVES * solve).length} of ${DIRECTIONS} directions take more than ${MOST_SOLVES}`,
);
console.log(
  `  the ring of ${DIRECTIONS} directions to its limits, held and settled, takes ${(ring / 1000).toFixed(0)} ms`,
);
say(`answers of ${MOST_SOLVES} solves in the ring`, ring / (MOST_SOLVES * solve), DIRECTIONS);

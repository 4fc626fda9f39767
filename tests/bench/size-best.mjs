// Sizings of one and two free values, each beside the best of every whole step of them; ONLY=3,7 takes some. RECORD=1
// keeps what a run over all of them found; run from the root of the repository.
import { readFileSync } from 'node:fs';
import { loadCore } from './shared/core.mjs';

const MOST_GAP = 1e-3;

const core = await loadCore();
const rows = JSON.parse(readFileSync(new URL('../size-problems.json', import.meta.url), 'utf8'));
const only = process.env.ONLY?.split(',').map(Number);
const example = (name) =>
  readFileSync(new URL(`../../packages/pan-cli/examples/${name}.yaml`, import.meta.url), 'utf8');
let met = 0;
let asked = 0;
let worst = Number.NEGATIVE_INFINITY;
let all = 0;
for (const [i, row] of rows.entries()) {
  if (only !== undefined && !only.includes(i + 1)) continue;
  const start = performance.now();
  const { found, best, gap, passes, tried, places } = core.compared(row, example(row.example));
  const good = passes && gap <= MOST_GAP;
  asked += 1;
  worst = Math.max(worst, gap);
  all += places;
  if (good) met += 1;
  else process.exitCode = 1;
  const seconds = (performance.now() - start) / 1000;
  console.log(
    `  ${i + 1} ${row.example}, ${row.goal} over ${Object.keys(row.free).join(' and ')}: ${found.toFixed(4)}, best of ${places} ${best.toFixed(4)}, ${(100 * gap).toFixed(3)} % off, ${good ? '' : 'NOT '}within ${100 * MOST_GAP} %${passes ? '' : ' and does NOT pass'}; ${tried} designs tried, ${seconds.toFixed(1)} s`,
  );
}
console.log(`  ${met} of ${asked} within ${100 * MOST_GAP} % of the best, and passing`);
if (only === undefined) {
  core.keepRecord('size-best', {
    what: 'Sizings of one or two values, beside every whole step of them',
    count: asked,
    seed: 1,
    found: `${met} within ${100 * MOST_GAP} % of the best and passing, the worst ${(100 * worst).toFixed(3)} % off; ${all} steps in all`,
  });
}

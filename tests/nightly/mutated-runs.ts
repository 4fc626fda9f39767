// Gives mutated designs, rails (DXF), logs (CSV) and scans (STL) to `pan` itself, one process each, and looks at how it
// ends: its exit code and place, its time and memory, and what it leaves in the folder. COUNT and PAN_SEED say how many
// and from which seed on; RECORD=1 keeps the tally.
import { judgedRun, RUNS } from '../hostile/mutated-run.js';
import { randomFrom } from '../random.js';
import { keepRecord } from '../run-record.js';

const MOST_MS = 2000;
const MOST_MB = 512;
const count = Number(process.env.COUNT ?? 300);
const seed = Number(process.env.PAN_SEED ?? 1);

const ends = new Map<number | null, number>();
let [longest, most, wrong] = [0, 0, 0];
for (let i = 0; i < count; i++) {
  const name = RUNS[(seed + i) % RUNS.length] as (typeof RUNS)[number];
  const { code, why, ms, megabytes } = judgedRun(
    name,
    'packages/pan-cli/dist/pan.js',
    'packages/pan-cli/examples',
    randomFrom(seed + i),
  );
  ends.set(code, (ends.get(code) ?? 0) + 1);
  // A file that is read goes on to be worked out, which takes what it takes.
  if (code === 2) longest = Math.max(longest, ms);
  most = Math.max(most, megabytes);
  if (why !== '' || (code === 2 && ms > MOST_MS) || megabytes > MOST_MB) {
    wrong++;
    console.log(
      `seed ${seed + i}: ${name}, exit ${code}, ${ms.toFixed(0)} ms, ${megabytes.toFixed(0)} MB: ${why}`,
    );
  }
  if (process.stderr.isTTY) process.stderr.write(`\r${i + 1} of ${count}`);
}
const found =
  `${ends.get(2) ?? 0} refused with exit 2 and a place, ${(ends.get(0) ?? 0) + (ends.get(1) ?? 0)} read, ` +
  `${wrong} wrong; longest refusal ${longest.toFixed(0)} ms of processor time, at most ${most.toFixed(0)} MB`;
console.log(`${count} mutated files from seed ${seed}, each to a process of its own: ${found}`);
keepRecord('mutated-runs', {
  what: 'Mutated designs, DXF, CSV and STL, each to a process of its own',
  count,
  seed,
  found,
});
if (wrong > 0) process.exitCode = 1;

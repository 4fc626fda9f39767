// Kills `pan cut` at random moments. COUNT and PAN_SEED say how often and from which seed. Exits 1 when what stands
// afterwards is neither the old set nor the new one, or an edit is lost. RECORD=1 keeps the tally in reference/runs.
import { killCuts, MOMENTS, STARTS } from '../hostile/killed-cut.js';
import { randomFrom } from '../random.js';
import { keepRecord } from '../run-record.js';

const count = Number(process.env.COUNT ?? 500);
const seed = Number(process.env.PAN_SEED ?? 1);
const runs = await killCuts('packages/pan-cli/dist/pan.js', count, randomFrom(seed), (run, done) => {
  if (run.wrong !== '') console.log(`kill ${done}, ${run.start}, ${run.moment}: ${run.wrong}`);
  if (process.stderr.isTTY) process.stderr.write(`\r${done} of ${count}`);
});
const many = (chosen: (run: (typeof runs)[number]) => boolean): number => runs.filter(chosen).length;
const tally = (some: typeof runs): string =>
  `${some.length}, of them ${some.filter((r) => r.midWrite).length} in mid-write; ` +
  (['old', 'new', 'aside', 'mixture'] as const)
    .map((end) => `${end} ${some.filter((r) => r.end === end).length}`)
    .join(', ');
for (const moment of MOMENTS) console.log(`${moment}: ${tally(runs.filter((r) => r.moment === moment))}`);
for (const start of STARTS) console.log(`over ${start}: ${tally(runs.filter((r) => r.start === start))}`);
const wrong = many((run) => run.wrong !== '');
const found =
  `${many((run) => run.killed)} died of it, ${many((run) => run.midWrite)} in mid-write; the old set ` +
  `${many((run) => run.end === 'old')} times, the new one ${many((run) => run.end === 'new')}, the old one set aside and ` +
  `put back by the next run ${many((run) => run.end === 'aside')}, a mixture ${many((run) => run.end === 'mixture')}; ` +
  `${wrong} wrong`;
console.log(`${count} kills from seed ${seed}: ${found}`);
keepRecord('killed-cuts', {
  what: 'Cuts over nothing, an old set and an edited one, killed',
  count,
  seed,
  found,
});
if (wrong > 0) process.exitCode = 1;

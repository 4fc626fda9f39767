// Kills `pan cut` at random moments. COUNT and PAN_SEED say how often and from which seed; RECORD=1 keeps the tally. Exits 1 when what stands
// afterwards is neither the old set nor the new one, or an edit is lost.
import { killCuts } from '../hostile/killed-cut.js';
import { randomFrom } from '../random.js';
import { keepRecord } from '../run-record.js';

const count = Number(process.env.COUNT ?? 500);
const seed = Number(process.env.PAN_SEED ?? 1);
const { runs, editsKept, recovered } = await killCuts(
  'packages/pan-cli/dist/pan.js',
  'packages/pan-cli/examples/two-wings.yaml',
  count,
  randomFrom(seed),
  (done) => {
    if (process.stderr.isTTY) process.stderr.write(`\r${done} of ${count}`);
  },
);
const many = (end: string): number => runs.filter((run) => run.end === end).length;
keepRecord('killed-cuts', {
  what: 'Cuts over an old set with an edited file, killed at random moments',
  count,
  seed,
  found:
    `${runs.filter(({ killed }) => killed).length} killed in time: old set ${many('old')}, new set ${many('new')}, ` +
    `none ${many('none')}, mixtures ${many('mixture')}; edits ${editsKept ? 'kept' : 'lost'}`,
});
console.log(
  `${count} cuts from seed ${seed}, ${runs.filter(({ killed }) => killed).length} killed in time: the old set ${many('old')} ` +
    `times, the new one ${many('new')}, none ${many('none')}, a mixture ${many('mixture')}; ` +
    `edits ${editsKept ? 'kept' : 'LOST'}, the next run ${recovered ? 'whole' : 'NOT whole'}`,
);
for (const { end, afterMs, killed, stands } of runs) {
  if (end === 'mixture' || end === 'none') {
    console.log(`${killed ? 'killed' : 'ended'} after ${afterMs.toFixed(0)} ms: ${end}; ${stands}`);
  }
}
if (many('none') + many('mixture') > 0 || !editsKept || !recovered) process.exitCode = 1;

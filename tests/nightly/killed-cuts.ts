// Kills `pan cut`, and the writing of a made set alone, at random moments. COUNT and WRITES say how often, PAN_SEED from
// which seed. Exits 1 when what stands afterwards is neither the old set nor the new one, or an edit is lost. RECORD=1
// keeps the tally in reference/runs.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { writeSet } from 'pan-cli/write/index.js';
import { type Killed, killCuts, MOMENTS, STARTS } from '../hostile/killed-cut.js';
import { randomFrom } from '../random.js';
import { keepRecord } from '../run-record.js';

const seed = Number(process.env.PAN_SEED ?? 1);
const program = process.argv[1] ?? '';
const [word, from = '', to = ''] = process.argv.slice(2);

/** What is killed in place of a whole cut: writes a set that lies elsewhere, as `pan cut --replace` does. */
const writeMade = (): void => {
  // In the order of its own list, so that the same list is written.
  const list = JSON.parse(readFileSync(join(from, '.pan-set.json'), 'utf8')) as { files: { path: string }[] };
  const files = list.files.map(({ path }) => ({
    path,
    content: new Uint8Array(readFileSync(join(from, path))),
  }));
  writeSet(to, files, true);
};

const tally = (some: readonly Killed[]): string =>
  `${some.length}, of them ${some.filter((r) => r.midWrite).length} in mid-write; ` +
  (['old', 'new', 'aside', 'mixture'] as const)
    .map((end) => `${end} ${some.filter((r) => r.end === end).length}`)
    .join(', ');

const kill = async (name: string, what: string, count: number, alone: boolean): Promise<void> => {
  if (count === 0) return;
  const runs = await killCuts(
    'packages/pan-cli/dist/pan.js',
    count,
    randomFrom(seed),
    (run, done) => {
      if (run.wrong !== '') console.log(`kill ${done}, ${run.start}, ${run.moment}: ${run.wrong}`);
      if (process.stderr.isTTY) process.stderr.write(`\r${done} of ${count}`);
    },
    alone ? (made, set) => [program, '--write', made, set] : null,
  );
  const many = (chosen: (run: Killed) => boolean): number => runs.filter(chosen).length;
  for (const moment of MOMENTS) console.log(`${moment}: ${tally(runs.filter((r) => r.moment === moment))}`);
  for (const start of STARTS) console.log(`over ${start}: ${tally(runs.filter((r) => r.start === start))}`);
  const wrong = many((run) => run.wrong !== '');
  const found =
    `${many((run) => run.killed)} died of it, ${many((run) => run.midWrite)} in mid-write; the old set ` +
    `${many((run) => run.end === 'old')} times, the new one ${many((run) => run.end === 'new')}, the old one set aside and ` +
    `put back by the next run ${many((run) => run.end === 'aside')}, a mixture ${many((run) => run.end === 'mixture')}; ` +
    `${wrong} wrong`;
  console.log(`${what}, ${count} kills from seed ${seed}: ${found}`);
  keepRecord(name, {
    what: `${what} over nothing, an old set and an edited one, killed`,
    count,
    seed,
    found,
  });
  if (wrong > 0) process.exitCode = 1;
};

if (word === '--write') writeMade();
else {
  await kill('killed-writes', 'Writing of a made cut set', Number(process.env.WRITES ?? 500), true);
  await kill('killed-cuts', 'Whole cuts', Number(process.env.COUNT ?? 500), false);
}

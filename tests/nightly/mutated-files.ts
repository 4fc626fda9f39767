// Reads mutated drawings (DXF), tables and logs (CSV) and scans (STL) by the ten thousand. COUNT of each and PAN_SEED
// say how many and from which seed on; PAN_SEED=that COUNT=1 does a failure again. RECORD=1 keeps the tally.
import { fileSources } from '../hostile/file-sources.js';
import { judgedFile, KINDS } from '../hostile/mutated-file.js';
import { randomFrom } from '../random.js';
import { keepRecord } from '../run-record.js';

const MOST_MS = 2000;
const MOST_MB = 512;
const count = Number(process.env.COUNT ?? 10_000);
const seed = Number(process.env.PAN_SEED ?? 1);
const sources = fileSources('packages/pan-cli/examples');

for (const kind of KINDS) {
  const ends = { read: 0, refused: 0, wrong: 0 };
  let longest = 0;
  for (let i = 0; i < count; i++) {
    const { end, why, ms } = await judgedFile(kind, sources, randomFrom(seed + i));
    const late = ms > MOST_MS;
    ends[late ? 'wrong' : end]++;
    longest = Math.max(longest, ms);
    if ((late || end === 'wrong') && ends.wrong <= 20)
      console.log(`${kind}, seed ${seed + i}: ${end}, ${ms.toFixed(0)} ms ${why.slice(0, 600)}`);
    if (process.stderr.isTTY && i % 100 === 0) process.stderr.write(`\r${kind} ${i} of ${count}`);
  }
  const megabytes = process.resourceUsage().maxRSS / 1024;
  const found =
    `${ends.read} read, ${ends.refused} refused with reason and advice, ${ends.wrong} wrong; ` +
    `longest ${longest.toFixed(0)} ms, at most ${megabytes.toFixed(0)} MB`;
  console.log(`${count} mutated ${kind.toUpperCase()} files from seed ${seed}: ${found}`);
  keepRecord(`mutated-${kind}`, { what: `Mutated ${kind.toUpperCase()} files`, count, seed, found });
  if (ends.wrong > 0 || megabytes > MOST_MB) process.exitCode = 1;
}
